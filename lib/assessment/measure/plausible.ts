import type { MeasureName } from '../../curriculum/measure/model'
import { entryFor, riseFor, speedFor } from './flight'
import type { Measured } from './measured'

/**
 * Where a range comes from: `judgement` is this software's own, for want of published figures, and no diving programme's;
 * `memory` has no source at hand; `geometry` is what a body can do.
 */
export type RangeBasis = 'judgement' | 'memory' | 'geometry'

/** What a measure can be expected to lie within, in its unit; outside it the points should be looked at again. */
export interface Plausible {
  readonly low: number
  readonly high: number
  readonly basis: RangeBasis
}

/** Degrees turned between two frames: nearer to half a turn, the way it went is a guess. */
export const plausibleTurn: Plausible = { low: -150, high: 150, basis: 'judgement' }

/** Seconds in the air, by the board's height in metres: nobody has published them for learners. */
const flightTimes: ReadonlyMap<number, Plausible> = new Map([
  [1, { low: 0.8, high: 1.5, basis: 'judgement' }],
  [3, { low: 1.1, high: 1.75, basis: 'judgement' }],
])

/** Ranges of what is measured on one frame or between two: degrees, metres, degrees a second. */
export const plausible = {
  bodyTilt: { low: -45, high: 45, basis: 'judgement' },
  armAngle: { low: -120, high: 120, basis: 'judgement' },
  hipAngle: { low: 10, high: 180, basis: 'geometry' },
  distanceFromTip: { low: 0.3, high: 2.5, basis: 'memory' },
  rotationRate: { low: -1200, high: 1200, basis: 'memory' },
} as const satisfies Record<string, Plausible>

/** Ranges of what a flight gives, from a board of so many metres; null from a height for which no range is kept. */
export function plausibleFlight(
  boardHeight: number,
): Record<'time' | 'takeOffSpeed' | 'rise' | 'entrySpeed', Plausible> | null {
  const time = flightTimes.get(boardHeight)
  if (!time) return null
  const of = (value: (time: number) => number): Plausible => ({ ...time, low: value(time.low), high: value(time.high) })
  const speed = (seconds: number) => speedFor(seconds, boardHeight)
  return {
    time,
    takeOffSpeed: of(speed),
    rise: of((seconds) => riseFor(speed(seconds))),
    entrySpeed: of((seconds) => entryFor(speed(seconds), boardHeight)),
  }
}

/** The range of a measure that a criterion may ask for, on a board of so many metres; null where no range is kept. */
export function plausibleFor(what: MeasureName, boardHeight: number | null): Plausible | null {
  const flight = boardHeight === null ? null : plausibleFlight(boardHeight)
  const ranges: Readonly<Record<MeasureName, Plausible | null>> = {
    ...plausible,
    flightTime: flight?.time ?? null,
    takeOffSpeed: flight?.takeOffSpeed ?? null,
    rise: flight?.rise ?? null,
    entrySpeed: flight?.entrySpeed ?? null,
  }
  return ranges[what]
}

/** Whether a result asks to check the points: it lies outside its range, or is no number. */
export const asksToCheck = ({ value }: Measured, { low, high }: Plausible): boolean => !(value >= low && value <= high)
