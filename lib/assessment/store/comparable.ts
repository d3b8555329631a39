import type { Scope } from '../../access/scope'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import { asAccount } from '../../platform/db'
import type { RatedMoment } from '../comparable'
import { programmeInstant } from '../device-clock'
import { type DiverHere, listDivers } from './divers-here'

/** A moment of a dive by a diver in scope. */
export interface ComparableMoment extends RatedMoment {
  readonly diver: DiverHere
  readonly place: Place
}

/**
 * All moments of a skill, at any place, of divers in scope, oldest first. Those of divers without consent to video, and those
 * whose link was erased, are none.
 */
export function listComparable(scope: Scope, skill: string): Promise<ComparableMoment[]> {
  return asAccount(scope.account, async (tx) => {
    const divers = new Map((await listDivers(tx, scope)).map((diver) => [diver.id, diver]))
    const attempts = await tx.attempt.findMany({
      where: { skill, diverId: { in: [...divers.keys()] } },
      select: { id: true, place: true, attemptedAt: true, offsetMs: true },
    })
    const attemptOf = new Map(attempts.map((attempt) => [attempt.id, attempt]))
    const seen = await tx.observation.findMany({
      where: { attemptId: { in: [...attemptOf.keys()] }, momentCount: { gt: 0 } },
      select: { id: true, attemptId: true, ratings: true },
    })
    const seenOf = new Map(seen.map((one) => [one.id, one]))
    const moments = await tx.moment.findMany({
      where: { observationId: { in: [...seenOf.keys()] }, link: { not: null } },
      select: { id: true, diverId: true, observationId: true },
    })
    const found = moments.flatMap(({ id, diverId, observationId }): ComparableMoment[] => {
      const one = seenOf.get(observationId)
      const attempt = one && attemptOf.get(one.attemptId)
      const diver = divers.get(diverId)
      if (!attempt || !diver) return []
      const at = programmeInstant(attempt.attemptedAt.getTime(), Number(attempt.offsetMs))
      const ratings = Object.values(one.ratings as Record<string, Rating>)
      return [{ id, at, ratings, diver, place: attempt.place as Place }]
    })
    return found.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
  })
}
