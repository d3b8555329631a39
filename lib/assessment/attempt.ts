import type { Pair } from '../curriculum/edition/curriculum'
import type { Rating } from '../curriculum/model'
import { type CriticalRating, effectiveObservations, momentsOf, ratingsStillAt } from './observation'
import type { AttemptFact, ObservationFact } from './record'
import type { AsOf, Instant } from './time'

/** One attempt as the rules read it on a date: what all coaches saw, combined criterion by criterion. */
export interface SeenAttempt {
  readonly fact: AttemptFact
  /** Its place in the order of dives: `attemptedAt`; of one whose date has not come, when it was received. */
  readonly at: Instant
  /** May count for the diver: its date has come, the skill was open or it was released, somebody within scope saw it. */
  readonly counts: boolean
  /** May count towards a standard: `counts`, and it was called before it was dived. */
  readonly earns: boolean
  /** Explicit ratings by coaches within scope; of a critical criterion the lowest by anyone. */
  readonly explicit: ReadonlyMap<string, Rating>
  /** Lower bounds from "rest as expected", where nobody rated explicitly. Never of a critical criterion. */
  readonly imputed: ReadonlyMap<string, Rating>
  /** Of critical criteria: every rating that counts against the diver, whoever gave it. */
  readonly critical: ReadonlyMap<string, readonly CriticalRating[]>
  /** Of each critical criterion that anyone rated: the lowest of those. */
  readonly lowest: ReadonlyMap<string, Rating>
  /** Coaches within scope whose views count. */
  readonly coaches: readonly string[]
  /** Video moments of those views. */
  readonly moments: number
}

/** The lower median: of an even number of ratings the lower of the two in the middle. `ratings` is not empty. */
export function lowerMedian(ratings: readonly Rating[]): Rating {
  const sorted = [...ratings].sort((a, b) => a - b)
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
}

/** The lowest of some ratings, which are not none. */
export const lowest = (ratings: readonly Rating[]): Rating => Math.min(4, ...ratings) as Rating

function ratingsBy(observations: readonly ObservationFact[], of: 'ratings' | 'imputed', key: string): Rating[] {
  const found: Rating[] = []
  for (const { [of]: ratings } of observations) {
    const rating = Object.hasOwn(ratings, key) ? ratings[key] : undefined
    if (rating !== undefined) found.push(rating)
  }
  return found
}

/** Reads one attempt at `pair` as of `date`; `fact` holds only what was received by then (as-of.ts). */
export function seeAttempt(pair: Pair, fact: AttemptFact, date: AsOf): SeenAttempt {
  const effective = effectiveObservations(fact.observations)
  const within = effective.filter((observation) => observation.withinScope)
  const explicit = new Map<string, Rating>()
  const imputed = new Map<string, Rating>()
  const critical = new Map<string, readonly CriticalRating[]>()
  const low = new Map<string, Rating>()
  for (const { criterion } of pair.criteria) {
    const { key } = criterion
    const rated = ratingsBy(within, 'ratings', key)
    if (criterion.critical) {
      const standing = effective.flatMap((view) => ratingsStillAt(fact.observations, view, key))
      if (standing.length === 0) continue
      critical.set(key, standing)
      low.set(key, lowest(standing.map(({ rating }) => rating)))
      if (rated.length > 0) explicit.set(key, low.get(key) ?? 0)
    } else if (rated.length > 0) explicit.set(key, lowerMedian(rated))
    else {
      const bounds = ratingsBy(within, 'imputed', key)
      if (bounds.length > 0) imputed.set(key, Math.max(...bounds) as Rating)
    }
  }
  const come = fact.day <= date.day
  const counts = come && (!fact.closedThen || fact.releasedAt !== null) && within.length > 0
  return {
    fact,
    at: come ? fact.attemptedAt : Math.min(fact.attemptedAt, fact.receivedAt),
    counts,
    earns: counts && fact.called,
    explicit,
    imputed,
    critical,
    lowest: low,
    coaches: [...new Set(within.map((observation) => observation.coach))],
    moments: within.reduce((sum, observation) => sum + momentsOf(observation), 0),
  }
}
