import { endsOf, touches } from '../../curriculum/measure/bands'
import { type AskedMeasure, type Bands, bandRatings, type MeasureName } from '../../curriculum/measure/model'
import type { Rating } from '../../curriculum/model'
import { type Place, placeFacts } from '../../curriculum/place'
import type { Measured } from './measured'
import { asksToCheck, plausibleFor } from './plausible'

/** A rating that a measured value suggests, with every rating that its 95 % interval touches. It is never written by itself. */
export interface Suggested {
  readonly kind: 'suggested'
  readonly rating: Rating
  /** Least and greatest rating within the interval; both are `rating` when the measure is sure. */
  readonly from: Rating
  readonly to: Rating
}

/** No suggestion: the value lies outside what is plausible, so the points are to be looked at again. */
export interface CheckPoints {
  readonly kind: 'check the points'
  /** The criterion is critical, and a value that stands would be below what is sound: never to be passed over as a slip. */
  readonly unsafe: boolean
}

/** No suggestion: the body is behind the tip of the board, over it. Nothing that is rated there is sound. */
export interface OverBoard {
  readonly kind: 'over the board'
}

/** What a measured value suggests. */
export type Suggestion = Suggested | CheckPoints | OverBoard

/** What of a criterion a suggestion is made from. */
export interface MeasuredCriterion {
  readonly critical: boolean
  readonly measure: AskedMeasure
}

/** After how many degrees a direction is the same again; nothing for what does not go round. A body's line has no head. */
const periods: Partial<Record<MeasureName, number>> = { bodyTilt: 180, armAngle: 360 }

const wholeTurnsIn = (low: number, high: number, at: number, period: number): boolean =>
  Math.floor((high - at) / period) >= Math.ceil((low - at) / period)

/** A distance behind the tip is no distance in front of it: its sign counts. */
const signed: readonly MeasureName[] = ['distanceFromTip']

/**
 * The sizes of the values from `low` to `high`: how far from nought they are, the short way round where they lie on a circle; of
 * what has a sign that counts, the values themselves.
 */
export function sizesOf(what: MeasureName, low: number, high: number): readonly [least: number, most: number] {
  if (signed.includes(what)) return [low, high]
  const period = periods[what]
  if (period === undefined)
    return low <= 0 && high >= 0
      ? [0, Math.max(-low, high)]
      : [Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high))]
  if (!(high - low < period)) return [0, period / 2]
  const ends = [low, high].map((value) => Math.abs(value - period * Math.round(value / period)))
  return [
    wholeTurnsIn(low, high, 0, period) ? 0 : Math.min(...ends),
    wholeTurnsIn(low, high, period / 2, period) ? period / 2 : Math.max(...ends),
  ]
}

/** The greatest rating whose band has a value from `low` to `high`; 0 when none has. */
const bestOf = (bands: Bands, low: number, high: number): Rating =>
  bandRatings.findLast((rating) => touches(bands[rating], low, high)) ?? 0

/** The greatest rating whose band holds all values from `low` to `high`: with bands that lie inside each other, the least of theirs. */
function worstOf(bands: Bands, low: number, high: number): Rating {
  const holds = bandRatings.findLast((rating) => {
    const [least, most] = endsOf(bands[rating])
    return least <= low && high <= most
  })
  return holds ?? 0
}

/**
 * The rating that a measure of an attempt at `place` suggests for its criterion. Bands lie inside each other (the linter sees
 * to it), so the rating falls away from the best on both sides and the interval's worst is at one of its ends. The coach decides:
 * nothing is rated by this.
 */
export function suggest(
  measured: Measured,
  { critical, measure: { what, bands } }: MeasuredCriterion,
  place: Place,
): Suggestion {
  const [size] = sizesOf(what, measured.value, measured.value)
  const range = plausibleFor(what, placeFacts[place].height)
  if (what === 'distanceFromTip' && measured.value < 0) return { kind: 'over the board' }
  const known = [measured.low, measured.high].every((end) => !Number.isNaN(end))
  if (!known || Number.isNaN(size) || (range && asksToCheck(measured, range)))
    return { kind: 'check the points', unsafe: critical && !(bestOf(bands, size, size) >= 3) }
  const [low, high] = sizesOf(what, measured.low, measured.high)
  return {
    kind: 'suggested',
    rating: bestOf(bands, size, size),
    from: worstOf(bands, Math.min(low, size), Math.max(high, size)),
    to: bestOf(bands, Math.min(low, size), Math.max(high, size)),
  }
}
