import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import { dayIn, type EpochDay } from '../time'

/** A diver of a club in scope, without her record. */
export interface DiverHere {
  readonly id: string
  readonly givenName: string
  readonly familyName: string
  readonly born: EpochDay | null
  readonly club: string
  readonly clubName: string
  /** IANA zone of her club. */
  readonly zone: string
  readonly squads: readonly string[]
}

interface Here {
  readonly divers: readonly DiverHere[]
  /** Zones of the programme's clubs. */
  readonly zones: ReadonlyMap<string, string>
}

const inForce = (at: Date) => ({ from: { lte: at }, OR: [{ to: null }, { to: { gt: at } }] })

/** All divers in scope, or those of them that are named. */
export async function listDivers(tx: Tx, scope: Scope, only?: readonly string[]): Promise<Here> {
  const clubs = await tx.club.findMany({ where: { programmeId: scope.programme } })
  const memberships = await tx.diverMembership.findMany({
    where: {
      ...inForce(new Date(scope.at)),
      clubId: { in: scope.clubs ? [...scope.clubs] : clubs.map((club) => club.id) },
      ...(only ? { diverId: { in: [...only] } } : {}),
    },
  })
  const about = { where: { diverId: { in: memberships.map((membership) => membership.diverId) } } }
  const words = new Map((await tx.diverWords.findMany(about)).map((row) => [row.diverId, row]))
  const squads = await tx.squad.findMany({ where: { clubId: { in: clubs.map((club) => club.id) } } })
  const squadDivers = await tx.squadDiver.findMany(about)
  const divers = memberships.map((membership): DiverHere => {
    const club = clubs.find((candidate) => candidate.id === membership.clubId)
    const word = words.get(membership.diverId)
    return {
      id: membership.diverId,
      givenName: word?.givenName ?? 'Name',
      familyName: word?.familyName ?? 'erased',
      born: word?.bornOn ? dayIn(word.bornOn.getTime(), 'UTC') : null,
      club: membership.clubId,
      clubName: club?.name ?? '',
      zone: club?.zone ?? scope.zone,
      squads: squadDivers
        .filter((row) => row.diverId === membership.diverId)
        .flatMap((row) => squads.find((squad) => squad.id === row.squadId)?.name ?? []),
    }
  })
  return { divers, zones: new Map(clubs.map((club) => [club.id, club.zone])) }
}
