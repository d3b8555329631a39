import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import { dayOf, type EpochDay } from '../time'

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

/** All divers in scope, or those of them that are named. */
export async function listDivers(tx: Tx, scope: Scope, only?: readonly string[]): Promise<DiverHere[]> {
  const at = new Date(scope.at)
  const clubs = scope.clubs && [...scope.clubs]
  const named = only ? [...only] : null
  const rows = await tx.$queryRaw<Row[]>`
    SELECT m."diverId" AS "id", w."givenName", w."familyName", w."bornOn", c."id" AS "club", c."name" AS "clubName", c."zone",
      ARRAY(SELECT s."name" FROM "SquadDiver" d JOIN "Squad" s ON s."id" = d."squadId"
        WHERE d."diverId" = m."diverId" ORDER BY s."createdAt", s."id") AS "squads"
    FROM "DiverMembership" m JOIN "Club" c ON c."id" = m."clubId" LEFT JOIN "DiverWords" w ON w."diverId" = m."diverId"
    WHERE c."programmeId" = ${scope.programme}::uuid AND (${clubs}::uuid[] IS NULL OR c."id" = ANY (${clubs}::uuid[]))
      AND m."from" <= ${at} AND (m."to" IS NULL OR m."to" > ${at})
      AND (${named}::uuid[] IS NULL OR m."diverId" = ANY (${named}::uuid[]))
    ORDER BY m."from", m."id"`
  return rows.map(({ bornOn, ...row }) => ({
    ...row,
    givenName: row.givenName ?? 'Name',
    familyName: row.familyName ?? 'erased',
    born: bornOn && dayOf(bornOn),
  }))
}

interface Row extends Omit<DiverHere, 'givenName' | 'familyName' | 'born'> {
  readonly givenName: string | null
  readonly familyName: string | null
  readonly bornOn: Date | null
}
