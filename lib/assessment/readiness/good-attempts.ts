import type { Pair, PairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { AttemptFact, DiverRecord, SignOffFact } from '../record'
import type { AsOf } from '../time'

/**
 * What would help most, added to a record: called attempts at a pair, rated 4 everywhere, each by another coach, on
 * alternating days, with a moment. They are the newest dives of all, received by the date.
 */
export function withGoodAttempts(record: DiverRecord, pair: Pair, count: number, date: AsOf): DiverRecord {
  const ratings = Object.fromEntries(pair.criteria.map(({ criterion }) => [criterion.key, 4 as Rating]))
  const added = Array.from({ length: count }, (_, nth): AttemptFact => {
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
          faults: [],
          supersedes: null,
          raiseAcceptedAt: null,
        },
      ],
    }
  })
  return { ...record, attempts: [...record.attempts, ...added] }
}

/** A sign-off at a level, made on the date on everything that can be cited. */
export function withSignOff(record: DiverRecord, pair: PairKey, level: string, date: AsOf): DiverRecord {
  const signOff: SignOffFact = {
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
  return { ...record, signOffs: [...record.signOffs, signOff] }
}
