import type { MeasureName } from '../../curriculum/measure/model'
import { armAngle, bodyTilt, clockHour, degreesAnHour, hipAngle, type Reading, rotationRate } from './angles'
import { distanceFromTip } from './distance'
import { measureByPeak, measureFlight } from './flight'
import { exactly, type Measured, type Quantity, seenAt } from './measured'
import { type Point, scaleOf, type Upright, uprightOf } from './picture'
import { asksToCheck, type Plausible, plausibleFor } from './plausible'
import { type Problem, problemOf } from './problem'
import { askedFor, type MarkedTime, type OfFlight, type OnFrames, type Slot, type Taken } from './taken'

/** Names of results: those that a criterion may ask for, and what else comes of the same points or marks. */
export type ResultName = MeasureName | 'clockHour' | 'takeOffSpeedByPeak' | 'dropByPeak'

/** A number that came of a measure, what could be expected, and whether it asks to look at the points again. */
export interface Result extends Measured {
  readonly what: ResultName
  readonly plausible: Plausible | null
  readonly check: boolean
}

/** Results, or why there are none. `bent`: the points of the body's line lie far from any line. */
export type Taking =
  | { readonly ok: true; readonly results: readonly Result[]; readonly bent: boolean }
  | { readonly ok: false; readonly problem: Problem }

/** How far a camera that is held with care may be off the upright, in degrees: our judgement. */
export const cameraSd = 2

/** How far off the frame of the highest point may be, in seconds: it is hard to see. Our judgement. */
export const peakSd = 0.04

const result = (what: ResultName, { value, sd, low, high }: Measured, plausible: Plausible | null): Result => {
  const measured = { value, sd, low, high }
  return { what, ...measured, plausible, check: plausible !== null && asksToCheck(measured, plausible) }
}

const named = (what: MeasureName, measured: Measured, board: number | null): Result =>
  result(what, measured, plausibleFor(what, board))

/** A point that was asked for. Throws RangeError where it is not: `problemOf` has seen to it. */
function at({ points }: OnFrames, slot: Slot): Point {
  const point = points[slot]
  if (!point) throw new RangeError(`${slot} was not placed`)
  return point
}

function uprightIn(taken: OnFrames): Upright {
  if (taken.upright === 'plumb')
    return { kind: 'plumb', top: at(taken, 'plumb top'), bottom: at(taken, 'plumb bottom') }
  if (taken.upright === 'level') return { kind: 'level', left: at(taken, 'edge left'), right: at(taken, 'edge right') }
  return { kind: 'picture', sd: cameraSd }
}

/** The points of the body's line that were placed. */
const lineOf = ({ kind, points }: OnFrames): Point[] =>
  kind === 'tilt' ? askedFor('tilt', 'picture').flatMap(({ slot }) => points[slot] ?? []) : []

/** Whether points lie off any one line by more than a tenth of their length: the body is bent, and its tilt says little. */
function isBent(points: readonly Point[], pixel: number): boolean {
  const [first, last] = [points[0], points.at(-1)]
  if (!first || !last || points.length < 3) return false
  const length = Math.hypot(last.x - first.x, last.y - first.y)
  if (length < 3 * pixel) return true
  const off = points.map(
    ({ x, y }) => Math.abs((last.x - first.x) * (first.y - y) - (first.x - x) * (last.y - first.y)) / length,
  )
  return Math.max(...off) > Math.max(0.1 * length, 3 * pixel)
}

function turn(taken: OnFrames): Measured | Problem {
  const [first, second] = taken.frames
  if (!first || !second) return { kind: 'missing', slots: ['later hip', 'later shoulder'] }
  if (second.atMs <= first.atMs) return { kind: 'order', first: 'frame' }
  if (first.frameUs === null || second.frameUs === null) return { kind: 'frame unknown' }
  // The camera stands still, so that up is the same in both, wherever it is.
  const reading: Reading = { up: exactly(0), pixel: taken.pixel }
  const timed = ({ atMs, frameUs }: MarkedTime) => seenAt(atMs / 1000, (frameUs ?? 0) / 1_000_000)
  return rotationRate(
    { hip: at(taken, 'hip'), shoulder: at(taken, 'shoulder'), reading, time: timed(first) },
    { hip: at(taken, 'later hip'), shoulder: at(taken, 'later shoulder'), reading, time: timed(second) },
  )
}

/** An angle from straight up as an hour of the clock face, from 0 exclusive to 12; its interval may reach past twelve. */
function hourOf({ value, low, high, sd }: Measured): Measured {
  const hour = clockHour(value)
  return {
    value: hour,
    sd: sd / degreesAnHour,
    low: hour - (value - low) / degreesAnHour,
    high: hour + (high - value) / degreesAnHour,
  }
}

function onFrames(taken: OnFrames, board: number | null): Taking {
  const problem = problemOf(taken)
  if (problem) return { ok: false, problem }
  const { kind, pixel, down } = taken
  const reading = (): Reading => ({ up: uprightOf(uprightIn(taken), pixel), pixel })
  const done = (...results: Result[]): Taking => ({ ok: true, results, bent: isBent(lineOf(taken), pixel) })
  if (kind === 'tilt') return done(named('bodyTilt', bodyTilt(lineOf(taken), reading()), board))
  if (kind === 'arms') {
    const angle = armAngle(at(taken, 'shoulder'), at(taken, 'hand'), reading(), down)
    const arms = named('armAngle', angle, board)
    return down ? done(arms) : done(arms, result('clockHour', hourOf(angle), null))
  }
  if (kind === 'hip')
    return done(named('hipAngle', hipAngle(at(taken, 'shoulder'), at(taken, 'hip'), at(taken, 'ankle'), pixel), board))
  if (kind === 'turn') {
    const rate = turn(taken)
    return 'kind' in rate ? { ok: false, problem: rate } : done(named('rotationRate', rate, board))
  }
  const known = { from: at(taken, 'length from'), to: at(taken, 'length to'), metres: taken.metres ?? 0 }
  const distance = distanceFromTip(at(taken, 'tip'), at(taken, 'near'), reading(), scaleOf(known, pixel))
  return done(named('distanceFromTip', distance, board))
}

function ofFlight({ leaves, meets, top, drop }: OfFlight, board: number | null): Taking {
  const refuse = (problem: Problem): Taking => ({ ok: false, problem })
  if (board === null) return refuse({ kind: 'no board' })
  if (leaves.frameUs === null || meets.frameUs === null) return refuse({ kind: 'frame unknown' })
  if (meets.atMs <= leaves.atMs) return refuse({ kind: 'order', first: 'flight' })
  if (!(drop.value >= 0 && drop.value <= 15 && drop.sd >= 0 && drop.sd <= 2)) return refuse({ kind: 'drop' })
  if (top && !(leaves.atMs < top.atMs && top.atMs < meets.atMs))
    return refuse({ kind: 'order', first: 'highest point' })
  const seen = ({ atMs }: MarkedTime, frameUs: number): Quantity => seenAt(atMs / 1000, frameUs / 1_000_000)
  const [takeOff, entry] = [seen(leaves, leaves.frameUs), seen(meets, meets.frameUs)]
  const { time, takeOffSpeed, rise, entrySpeed } = measureFlight({ takeOff, entry, drop })
  const results = [
    named('flightTime', time, board),
    named('takeOffSpeed', takeOffSpeed, board),
    named('rise', rise, board),
    named('entrySpeed', entrySpeed, board),
  ]
  if (!top) return { ok: true, results, bent: false }
  const peak = measureByPeak({ takeOff, entry }, { value: top.atMs / 1000, sd: peakSd })
  const near: Plausible = { low: board - 0.5, high: board + 0.5, basis: 'judgement' }
  return {
    ok: true,
    results: [
      ...results,
      result('takeOffSpeedByPeak', peak.takeOffSpeed, plausibleFor('takeOffSpeed', board)),
      result('dropByPeak', peak.drop, near),
    ],
    bent: false,
  }
}

/** What comes of a measure that a coach took on a film. `board` is its height in metres, null where there is none. Never throws. */
export const measureTaken = (taken: Taken, board: number | null): Taking =>
  taken.kind === 'flight' ? ofFlight(taken, board) : onFrames(taken, board)
