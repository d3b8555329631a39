import type { Rating } from '../curriculum/model'
import type { ObservationFact } from './record'
import type { Instant } from './time'

/** A critical rating by anyone, with the instant from which it is known. */
export interface CriticalRating {
  readonly rating: Rating
  readonly receivedAt: Instant
}

/** Video moments of a view as of the date: those it was kept with, and one that was linked later. */
export const momentsOf = ({ moments, linkedAt }: ObservationFact): number => moments + (linkedAt === null ? 0 : 1)

/** The views of an attempt that nothing supersedes. Observations are those received by the date. */
export function effectiveObservations(observations: readonly ObservationFact[]): ObservationFact[] {
  const superseded = new Set(observations.map((observation) => observation.supersedes))
  return observations.filter((observation) => !superseded.has(observation.id))
}

/**
 * The ratings of one critical criterion that an effective observation leaves standing: its own, and those of what it
 * superseded for as long as no head coach accepted the change. So a raise, or taking a rating back, hides no danger,
 * while a lower rating counts at once.
 */
export function ratingsStillAt(
  observations: readonly ObservationFact[],
  effective: ObservationFact,
  criterion: string,
): CriticalRating[] {
  const standing: CriticalRating[] = []
  const met = new Set<string>()
  let view: ObservationFact | undefined = effective
  while (view && !met.has(view.id)) {
    const { id, ratings, receivedAt, raiseAcceptedAt, supersedes }: ObservationFact = view
    met.add(id)
    const rating = Object.hasOwn(ratings, criterion) ? ratings[criterion] : undefined
    if (rating !== undefined) standing.push({ rating, receivedAt })
    view = raiseAcceptedAt === null ? observations.find((before) => before.id === supersedes) : undefined
  }
  return standing
}
