import type { Readiness } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import type { StandingRow } from '../readiness/standing-row'
import { dayIn, dayOf } from '../time'
import { type DiverHere, listDivers } from './divers-here'
import { lockDivers } from './lock'
import { refreshReadiness, toStandingRow } from './readiness'

/** A diver with how she stands to each target of the edition, in no order. */
export interface DiverStanding extends DiverHere {
  readonly rows: readonly StandingRow[]
}

/** Everybody in scope as lists and the region show them: who, where, and how she stands; nobody is evaluated. */
export interface Standings {
  readonly curriculum: Curriculum
  readonly divers: readonly DiverStanding[]
}

/** Whether a row still says what an evaluation would: same edition, same club, and its day has not come there. */
const holds = (row: Readiness, curriculum: Curriculum, { club, zone }: DiverHere, at: number): boolean =>
  row.editionHash === curriculum.hash &&
  row.clubId === club &&
  (row.validUntil === null || dayOf(row.validUntil) > dayIn(at, zone))

const byDiver = (rows: readonly Readiness[]): ReadonlyMap<string, readonly Readiness[]> => {
  const groups = new Map<string, Readiness[]>()
  for (const row of rows) groups.set(row.diverId, [...(groups.get(row.diverId) ?? []), row])
  return groups
}

/** The standings of the divers in scope, inside a transaction; what ran out is worked out afresh first, under the divers' row locks. */
export async function listStandings(tx: Tx, scope: Scope): Promise<Standings> {
  const curriculum = await getEditionInForce(tx, scope)
  const divers = await listDivers(tx, scope)
  const where = { diverId: { in: divers.map((diver) => diver.id) } }
  const targets = curriculum.levels.length + curriculum.boardMoves.length
  const kept = byDiver(await tx.readiness.findMany({ where }))
  const stale = divers.filter((diver) => {
    const rows = kept.get(diver.id) ?? []
    return rows.length !== targets || !rows.every((row) => holds(row, curriculum, diver, scope.at))
  })
  const ids = stale.map((diver) => diver.id)
  if (ids.length > 0) {
    await lockDivers(tx, ids)
    await refreshReadiness(tx, scope, curriculum, ids)
  }
  const fresh = ids.length > 0 ? byDiver(await tx.readiness.findMany({ where })) : kept
  return {
    curriculum,
    divers: divers.map((diver) => ({ ...diver, rows: (fresh.get(diver.id) ?? []).map(toStandingRow) })),
  }
}

/** How everybody in scope stands, as of now. */
export const readStandings = (scope: Scope): Promise<Standings> =>
  asAccount(scope.account, (tx) => listStandings(tx, scope), { timeout: 60_000 })
