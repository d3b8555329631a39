import type { MeasureName } from '../../curriculum/measure/model'
import {
  angleTurned,
  armAngle,
  bodyTilt,
  clockHour,
  degreesAnHour,
  hipAngle,
  type Reading,
  rotationRate,
} from './angles'
import { distanceFromTip, heightOverTip, passesBoard, waterSide } from './distance'
import { measureByPeak, measureFlight } from './flight'
import { exactly, happenedBefore, type Measured, type Quantity, seenAt } from './measured'
import { type Point, scaleOf, type Upright, uprightOf } from './picture'
import { asksToCheck, type Plausible, plausibleFor, plausibleTurn } from './plausible'
import { leastApart, type Problem, problemOf } from './problem'
import { askedFor, type MarkedTime, needsUpright, type OfFlight, type OnFrames, type Slot, type Taken } from './taken'

/** Names of results: those that a criterion may ask for, and what else comes of the same points or marks. */
export type ResultName = MeasureName | 'clockHour' | 'heightOverTip' | 'turned' | 'takeOffSpeedByPeak' | 'dropByPeak'

/** A number that came of a measure, what could be expected, and whether it asks to look at the points again. */
export interface Result extends Measured {
  readonly what: ResultName
  readonly plausible: Plausible | null
  readonly check: boolean
}

/**
 * What to look at again although it could be measured: the points of the body's line lie far from any line; the upright lies far
 * from the picture's own; the body is behind the tip; a distance is not read where the body passes the level of the board; it
 * was kept before a point on the board told which side is the water.
 */
export type Caution = 'bent' | 'upright askew' | 'behind the tip' | 'not passing' | 'side unknown'

/** Results, or why there are none. */
export type Taking =
  | { readonly ok: true; readonly results: readonly Result[]; readonly cautions: readonly Caution[] }
  | { readonly ok: false; readonly problem: Problem }

/** How far a camera that is held with care may be off the upright, in degrees: our judgement. */
export const cameraSd = 2

/** From how many degrees off the picture's own an upright asks to look at its ends: nobody holds a camera so. Our judgement. */
const mostAskew = 20

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

function turn(taken: OnFrames): Result[] | Problem {
  const [first, second] = taken.frames
  if (!first || !second) return { kind: 'missing', slots: ['later hip', 'later shoulder'] }
  if (second.atMs <= first.atMs) return { kind: 'order', first: 'frame' }
  if (first.frameUs === null || second.frameUs === null) return { kind: 'frame unknown' }
  // The camera stands still, so that up is the same in both, wherever it is.
  const reading: Reading = { up: exactly(0), pixel: taken.pixel }
  const timed = ({ atMs, frameUs }: MarkedTime) => seenAt(atMs / 1000, (frameUs ?? 0) / 1_000_000)
  const both = [
    { hip: at(taken, 'hip'), shoulder: at(taken, 'shoulder'), reading, time: timed(first) },
    { hip: at(taken, 'later hip'), shoulder: at(taken, 'later shoulder'), reading, time: timed(second) },
  ] as const
  return [named('rotationRate', rotationRate(...both), null), result('turned', angleTurned(...both), plausibleTurn)]
}

function distance(taken: OnFrames, reading: Reading): Result[] | Problem {
  const [tip, near, { pixel }] = [at(taken, 'tip'), at(taken, 'near'), taken]
  const side = waterSide(at(taken, 'board'), tip, reading.up, leastApart * pixel)
  if (side === null) return { kind: 'side' }
  const scale = scaleOf(
    { from: at(taken, 'length from'), to: at(taken, 'length to'), metres: taken.metres ?? 0 },
    pixel,
  )
  return [
    named('distanceFromTip', distanceFromTip(tip, near, side, reading, scale), null),
    result('heightOverTip', heightOverTip(tip, near, reading, scale), null),
  ]
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

function resultsOn(taken: OnFrames, reading: Reading): Result[] | Problem {
  const { kind, pixel, down } = taken
  if (kind === 'tilt') return [named('bodyTilt', bodyTilt(lineOf(taken), reading), null)]
  if (kind === 'hip')
    return [named('hipAngle', hipAngle(at(taken, 'shoulder'), at(taken, 'hip'), at(taken, 'ankle'), pixel), null)]
  if (kind === 'turn') return turn(taken)
  if (kind === 'distance') return distance(taken, reading)
  const angle = armAngle(at(taken, 'shoulder'), at(taken, 'hand'), reading, down)
  const arms = named('armAngle', angle, null)
  return down ? [arms] : [arms, result('clockHour', hourOf(angle), null)]
}

function cautionsOn(taken: OnFrames, { up, pixel }: Reading, results: readonly Result[]): Caution[] {
  const found = (name: ResultName) => results.find(({ what }) => what === name)?.value ?? 0
  const holds: readonly (readonly [Caution, boolean])[] = [
    ['bent', isBent(lineOf(taken), pixel)],
    ['upright askew', Math.abs(up.value) > mostAskew],
    ['behind the tip', found('distanceFromTip') < 0],
    ['not passing', !passesBoard(found('heightOverTip'))],
  ]
  return holds.flatMap(([caution, does]) => (does ? [caution] : []))
}

function onFrames(taken: OnFrames): Taking {
  const problem = problemOf(taken)
  if (problem) return { ok: false, problem }
  const up = needsUpright(taken.kind) ? uprightOf(uprightIn(taken), taken.pixel) : exactly(0)
  const reading: Reading = { up, pixel: taken.pixel }
  const results = resultsOn(taken, reading)
  return 'kind' in results
    ? { ok: false, problem: results }
    : { ok: true, results, cautions: cautionsOn(taken, reading, results) }
}

function ofFlight({ leaves, meets, top, drop }: OfFlight, board: number | null): Taking {
  const refuse = (problem: Problem): Taking => ({ ok: false, problem })
  if (board === null) return refuse({ kind: 'no board' })
  if (leaves.frameUs === null || meets.frameUs === null) return refuse({ kind: 'frame unknown' })
  if (meets.atMs <= leaves.atMs) return refuse({ kind: 'order', first: 'flight' })
  if (!(drop.value >= 0 && drop.value <= 15 && drop.sd >= 0 && drop.sd <= 2)) return refuse({ kind: 'drop' })
  if (top && !(leaves.atMs < top.atMs && top.atMs < meets.atMs))
    return refuse({ kind: 'order', first: 'highest point' })
  const [left, met] = [leaves.frameUs / 1_000_000, meets.frameUs / 1_000_000]
  const [takeOff, entry] = [seenAt(leaves.atMs / 1000, left), seenAt(meets.atMs / 1000, met)]
  const { time, takeOffSpeed, rise, entrySpeed } = measureFlight({ takeOff, entry, drop })
  const results = [
    named('flightTime', time, board),
    named('takeOffSpeed', takeOffSpeed, board),
    named('rise', rise, board),
    named('entrySpeed', entrySpeed, board),
  ]
  if (!top) return { ok: true, results, cautions: [] }
  // The highest point is no first frame of anything: the other two are when it happened, not when it was first seen.
  const between = { takeOff: happenedBefore(takeOff.value, left), entry: happenedBefore(entry.value, met) }
  const peak: Quantity = { value: top.atMs / 1000, sd: peakSd }
  if (peak.value >= between.entry.value) return refuse({ kind: 'order', first: 'highest point' })
  const { takeOffSpeed: speed, drop: implied } = measureByPeak(between, peak)
  const near: Plausible = { low: board - 0.5, high: board + 0.5, basis: 'judgement' }
  const byPeak = [
    result('takeOffSpeedByPeak', speed, plausibleFor('takeOffSpeed', board)),
    result('dropByPeak', implied, near),
  ]
  return { ok: true, results: [...results, ...byPeak], cautions: [] }
}

/** What comes of a measure that a coach took on a film. `board` is its height in metres, null where there is none. Never throws. */
export const measureTaken = (taken: Taken, board: number | null): Taking =>
  taken.kind === 'flight' ? ofFlight(taken, board) : onFrames(taken)
