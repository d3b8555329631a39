import type { Scope } from '../../access/scope'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import { asAccount, type Tx } from '../../platform/db'
import type { RatedMoment } from '../comparable'
import { programmeInstant } from '../device-clock'
import { listCopied } from './copies'
import { type DiverHere, listDivers } from './divers-here'

/** A moment of a dive by a diver in scope. */
export interface ComparableMoment extends RatedMoment {
  readonly diver: DiverHere
  readonly place: Place
  /** Its own id, and those under which earlier views of its coach held it. */
  readonly copies: readonly string[]
}

/** What each coach rated of some attempts, by the view of hers that is in force. */
async function listRated(tx: Tx, attempts: readonly string[]) {
  const heads = await tx.observationHead.findMany({ where: { attemptId: { in: [...attempts] } } })
  const rows = await tx.observation.findMany({
    where: { id: { in: heads.map(({ observationId }) => observationId) } },
    select: { attemptId: true, coachId: true, ratings: true },
  })
  const rated = new Map(rows.map((row) => [`${row.attemptId} ${row.coachId}`, row.ratings as Record<string, Rating>]))
  return (attempt: string, coach: string) => rated.get(`${attempt} ${coach}`) ?? {}
}

/**
 * All moments of a skill, at any place, of divers in scope, as the views in force show them, oldest first. Those of divers
 * without consent to video, and those whose link was erased, are none.
 */
export function listComparable(scope: Scope, skill: string): Promise<ComparableMoment[]> {
  return asAccount(scope.account, async (tx) => {
    const divers = new Map((await listDivers(tx, scope)).map((diver) => [diver.id, diver]))
    const attempts = await tx.attempt.findMany({
      where: { skill, diverId: { in: [...divers.keys()] } },
      select: { id: true, place: true, attemptedAt: true, offsetMs: true },
    })
    const attemptOf = new Map(attempts.map((attempt) => [attempt.id, attempt]))
    const moments = await listCopied(tx, { attemptId: { in: [...attemptOf.keys()] } })
    const shown = moments.filter((moment) => moment.shown)
    const ratedOf = await listRated(
      tx,
      shown.map(({ view }) => view.attempt),
    )
    const found = shown.flatMap(({ id, diver: of, view, copies }): ComparableMoment[] => {
      const attempt = attemptOf.get(view.attempt)
      const diver = divers.get(of)
      if (!attempt || !diver) return []
      const at = programmeInstant(attempt.attemptedAt.getTime(), Number(attempt.offsetMs))
      const ratings = Object.values(ratedOf(view.attempt, view.coach))
      return [{ id, at, ratings, diver, place: attempt.place as Place, copies }]
    })
    return found.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
  })
}
