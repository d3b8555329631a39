import type { Pair, PairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { AttemptFact, SignOffFact } from '../record'
import type { AsOf } from '../time'

/**
 * What would help most: called attempts at a pair, rated 4 everywhere, each by another coach, on alternating days, with a
 * moment. They are the newest dives of all, received by the date.
 */
export function goodAttempts(pair: Pair, count: number, date: AsOf): AttemptFact[] {
  const ratings = Object.fromEntries(pair.criteria.map(({ criterion }) => [criterion.key, 4 as Rating]))
  return Array.from({ length: count }, (_, nth): AttemptFact => {
    const id = `~good ${pair.key} ${String(nth).padStart(4, '0')}`
    return {
      id,
      pair: pair.key,
      atLevel: '',
      attemptedAt: date.instant,
      receivedAt: date.instant,
      // The first is today's, so that it is newer than any lapse.
      day: date.day - (nth % Math.max(1, pair.standard.days)),
      club: '',
      called: true,
      cued: false,
      futureDated: false,
      closedThen: false,
      releasedAt: null,
      observations: [
        {
          id,
          coach: `~coach ${nth % Math.max(1, pair.standard.coaches)}`,
          observedOn: 'deck',
          receivedAt: date.instant,
          ratings,
          imputed: {},
          withinScope: true,
          moments: 1,
          linkedAt: null,
          faults: [],
          supersedes: null,
          raiseAcceptedAt: null,
        },
      ],
    }
  })
}

/** A sign-off at a level, made on the date on everything that can be cited. */
export function imaginedSignOff(pair: PairKey, level: string, date: AsOf): SignOffFact {
  return {
    id: `~signed ${pair} ${level}`,
    pair,
    level,
    coach: '~coach',
    signedAt: date.instant,
    receivedAt: date.instant,
    day: date.day,
    by: 'standard',
    waiver: null,
    evidence: [],
    revokedAt: null,
  }
}
