import type { Pair } from '../curriculum/edition/curriculum'
import type { Rating } from '../curriculum/model'
import { lowest } from './attempt'
import { effectiveObservations, ratingsStillAt } from './observation'
import type { AttemptFact, ObservationFact } from './record'

/** A critical rating that a correction raised or took back, which counts when a head coach accepts it. */
export interface Raise {
  readonly criterion: string
  /** The lowest rating that still counts against the diver. */
  readonly from: Rating
  /** What the correction says; null when it took the rating back. */
  readonly to: Rating | null
}

/** Of one effective observation of an attempt at `pair`: the raises that no head coach has accepted. */
export function raisesOf(pair: Pair, observations: readonly ObservationFact[], view: ObservationFact): Raise[] {
  if (view.supersedes === null || view.raiseAcceptedAt !== null) return []
  return pair.criteria.flatMap(({ criterion: { key, critical } }): Raise[] => {
    const standing = critical ? ratingsStillAt(observations, view, key).map(({ rating }) => rating) : []
    if (standing.length === 0) return []
    const to = Object.hasOwn(view.ratings, key) ? (view.ratings[key] ?? null) : null
    const from = lowest(standing)
    return to === null || from < to ? [{ criterion: key, from, to }] : []
  })
}

/** The corrections of an attempt that wait for a head coach, each with what it raised. */
export const raisedIn = (
  pair: Pair,
  attempt: AttemptFact,
): { readonly view: ObservationFact; readonly raises: readonly Raise[] }[] =>
  effectiveObservations(attempt.observations)
    .map((view) => ({ view, raises: raisesOf(pair, attempt.observations, view) }))
    .filter(({ raises }) => raises.length > 0)
