import type { Rating } from '../curriculum/model'
import type { SeenAttempt } from './attempt'
import type { PairHistory } from './history'
import type { StandingShortfall } from './shortfall'
import { criticalRating, expectedAt } from './verdict'

/**
 * The attempts among the last `clean` in which a critical criterion was rated, called or not, that fell short of
 * `expected`; newest first. Only the first `upTo` attempts are looked at. An attempt that may not count (beyond scope,
 * at a closed skill, its date not come) pushes no other out, but stands itself when it fell short.
 */
export function shortLately(
  history: PairHistory,
  criterion: string,
  expected: Rating,
  upTo = history.attempts.length,
): SeenAttempt[] {
  const short: SeenAttempt[] = []
  let rated = 0
  for (let index = upTo - 1; index >= 0 && rated < history.pair.standard.clean; index--) {
    const attempt = history.attempts[index]
    if (!attempt) continue
    if ((criticalRating(attempt, criterion) ?? 4) < expected) short.push(attempt)
    if (attempt.counts && attempt.explicit.has(criterion)) rated++
  }
  return short
}

/** A shortfall as findings name it. */
export const shortfallOf = (attempt: SeenAttempt, criterion: string, expected: Rating): StandingShortfall => ({
  criterion,
  rating: criticalRating(attempt, criterion) ?? 0,
  expected,
  attempt: attempt.fact.id,
  day: attempt.fact.day,
})

/**
 * The standing shortfalls at a level index: of each critical criterion that fell short in any of its last `clean`
 * rated attempts, the newest such attempt. While there is one, no standard holds and no override exists.
 */
export function standingShortfalls(history: PairHistory, level: number, upTo?: number): StandingShortfall[] {
  return history.pair.criteria.flatMap((attached) => {
    const { key, critical } = attached.criterion
    const expected = expectedAt(attached, level)
    const newest = critical ? shortLately(history, key, expected, upTo)[0] : undefined
    return newest ? [shortfallOf(newest, key, expected)] : []
  })
}
