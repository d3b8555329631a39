import { v7 as uuidv7 } from 'uuid'
import { asAccount, type Tx } from '../../platform/db'
import type { Scope } from '../scope'

export interface SquadRow {
  readonly id: string
  readonly club: string
  readonly name: string
  /** Ids of the divers in it who are of the club today. */
  readonly divers: readonly string[]
}

export interface ClubDiver {
  readonly id: string
  readonly givenName: string
  readonly familyName: string
}

/** A club's squads in the order in which they were made, and its divers by name. */
export interface ClubSquads {
  readonly squads: readonly SquadRow[]
  readonly divers: readonly ClubDiver[]
}

async function listClubDivers(tx: Tx, scope: Scope, club: string): Promise<ClubDiver[]> {
  const at = new Date(scope.at)
  const members = await tx.diverMembership.findMany({
    where: { clubId: club, from: { lte: at }, OR: [{ to: null }, { to: { gt: at } }] },
  })
  const words = await tx.diverWords.findMany({ where: { diverId: { in: members.map((member) => member.diverId) } } })
  return members
    .map(({ diverId }) => {
      const word = words.find((one) => one.diverId === diverId)
      return { id: diverId, givenName: word?.givenName ?? 'Name', familyName: word?.familyName ?? 'erased' }
    })
    .sort((a, b) => a.givenName.localeCompare(b.givenName, 'en') || a.familyName.localeCompare(b.familyName, 'en'))
}

/** Squads and divers of one club that the account sees. */
export function readSquads(scope: Scope, club: string): Promise<ClubSquads> {
  return asAccount(scope.account, async (tx) => {
    const divers = await listClubDivers(tx, scope, club)
    const squads = await tx.squad.findMany({ where: { clubId: club }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] })
    const rows = await tx.squadDiver.findMany({ where: { squadId: { in: squads.map((squad) => squad.id) } } })
    const inSquad = (squad: string, diver: string) => rows.some((row) => row.squadId === squad && row.diverId === diver)
    return {
      divers,
      squads: squads.map(({ id, name }) => ({
        id,
        club,
        name,
        divers: divers.filter((diver) => inSquad(id, diver.id)).map((diver) => diver.id),
      })),
    }
  })
}

/** The club of a squad, or null: outside what the account sees it does not exist. */
export async function findSquadClub(scope: Scope, squad: string): Promise<string | null> {
  const row = await asAccount(scope.account, (tx) => tx.squad.findUnique({ where: { id: squad } }))
  return row?.clubId ?? null
}

/** Makes a squad and answers its id. For the head coach. */
export async function makeSquad(scope: Scope, club: string, name: string): Promise<string> {
  const id = uuidv7()
  await asAccount(scope.account, (tx) =>
    tx.squad.create({ data: { id, clubId: club, name, createdAt: new Date(scope.at) } }),
  )
  return id
}

/** Names a squad, and says who is in it: whoever is not named is taken out. For the head coach of its club. */
export async function keepSquad(
  scope: Scope,
  squad: string,
  { name, divers }: { readonly name: string; readonly divers: readonly string[] },
): Promise<void> {
  await asAccount(scope.account, async (tx) => {
    await tx.squad.update({ where: { id: squad }, data: { name } })
    await tx.squadDiver.deleteMany({ where: { squadId: squad, diverId: { notIn: [...divers] } } })
    const before = await tx.squadDiver.findMany({ where: { squadId: squad } })
    const joining = divers.filter((diver) => !before.some((row) => row.diverId === diver))
    await tx.squadDiver.createMany({ data: joining.map((diverId) => ({ squadId: squad, diverId })) })
  })
}
