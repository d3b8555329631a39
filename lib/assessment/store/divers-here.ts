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

interface Row {
  readonly id: string
  readonly givenName: string | null
  readonly familyName: string | null
  readonly bornOn: Date | null
  readonly club: string
  readonly squads: string[]
}

/** All divers in scope, or those of them that are named. */
export async function listDivers(tx: Tx, scope: Scope, only?: readonly string[]): Promise<Here> {
  const clubs = await tx.club.findMany({ where: { programmeId: scope.programme } })
  const inScope = scope.clubs ? [...scope.clubs] : clubs.map((club) => club.id)
  const at = new Date(scope.at)
  const named = only ? [...only] : null
  const rows = await tx.$queryRaw<Row[]>`
    SELECT m."diverId" AS "id", w."givenName", w."familyName", w."bornOn", m."clubId" AS "club",
      ARRAY(SELECT s."name" FROM "SquadDiver" d JOIN "Squad" s ON s."id" = d."squadId"
        WHERE d."diverId" = m."diverId" ORDER BY s."createdAt", s."id") AS "squads"
    FROM "DiverMembership" m LEFT JOIN "DiverWords" w ON w."diverId" = m."diverId"
    WHERE m."clubId" = ANY (${inScope}::uuid[]) AND m."from" <= ${at} AND (m."to" IS NULL OR m."to" > ${at})
      AND (${named}::uuid[] IS NULL OR m."diverId" = ANY (${named}::uuid[]))
    ORDER BY m."from", m."id"`
  const divers = rows.map((row): DiverHere => {
    const club = clubs.find((candidate) => candidate.id === row.club)
    return {
      id: row.id,
      givenName: row.givenName ?? 'Name',
      familyName: row.familyName ?? 'erased',
      born: row.bornOn && dayIn(row.bornOn.getTime(), 'UTC'),
      club: row.club,
      clubName: club?.name ?? '',
      zone: club?.zone ?? scope.zone,
      squads: row.squads,
    }
  })
  return { divers, zones: new Map(clubs.map((club) => [club.id, club.zone])) }
}
