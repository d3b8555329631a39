import { notFound } from 'next/navigation'
import { headedClubs } from '@/lib/access/can'
import { findSquadClub, readSquads } from '@/lib/access/store/squads'
import { listTransfers } from '@/lib/access/store/transfers'
import { transferStep } from '@/lib/access/transfer'
import { type Headed, loadHeaded } from '../people/loader'

interface Named {
  readonly id: string
  readonly name: string
}

export interface SquadsPage extends Omit<Headed, 'actor' | 'scope'> {
  readonly squads: readonly (Named & { readonly count: number })[]
  readonly divers: number
  readonly without: readonly Named[]
  /** Transfers that want this head coach's word. */
  readonly waiting: number
}

/** The squads of a club, who is in none, and whether a transfer waits. */
export async function loadSquads(asked: string | string[] | undefined): Promise<SquadsPage> {
  const { actor, scope, club, choice } = await loadHeaded('/desk/squads', asked)
  const { squads, divers } = await readSquads(scope, club.club)
  const transfers = await listTransfers(scope)
  const headed = headedClubs(actor).map((post) => post.club)
  const placed = new Set(squads.flatMap((squad) => squad.divers))
  return {
    club,
    choice,
    squads: squads.map(({ id, name, divers: members }) => ({ id, name, count: members.length })),
    divers: divers.length,
    without: divers
      .filter(({ id }) => !placed.has(id))
      .map(({ id, givenName, familyName }) => ({ id, name: `${givenName} ${familyName}` })),
    waiting: transfers.filter((transfer) => transferStep(transfer, headed) === 'to agree').length,
  }
}

export interface SquadPage {
  readonly id: string
  readonly name: string
  readonly clubName: string
  readonly divers: readonly (Named & { readonly chosen: boolean })[]
}

/** The squad's club as the head coach's page has it; a squad of no club that she heads does not exist. */
export async function loadSquadClub(squad: string): Promise<Headed> {
  const all = await loadHeaded('/desk/squads', undefined)
  const club = /^[0-9a-f-]{36}$/.test(squad) ? await findSquadClub(all.scope, squad) : null
  if (!club) notFound()
  return loadHeaded('/desk/squads', club)
}

/** One squad and all divers of its club, those in it chosen. */
export async function loadSquad(id: string): Promise<SquadPage> {
  const { scope, club } = await loadSquadClub(id)
  const { squads, divers } = await readSquads(scope, club.club)
  const squad = squads.find((one) => one.id === id)
  if (!squad) notFound()
  return {
    id,
    name: squad.name,
    clubName: club.clubName,
    divers: divers.map((diver) => ({
      id: diver.id,
      name: `${diver.givenName} ${diver.familyName}`,
      chosen: squad.divers.includes(diver.id),
    })),
  }
}
