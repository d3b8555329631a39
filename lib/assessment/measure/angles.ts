import { type Measured, measuredAs, propagate, type Quantity, wrap } from './measured'
import { direction, type Point, placed, pointIn } from './picture'

/** How a picture is read: where up is (degrees, `uprightOf`) and the standard deviation of placing a point, in pixels. */
export interface Reading {
  readonly up: Quantity
  readonly pixel: number
}

/** The direction of the straight line closest to the points, in degrees from the picture's top, known up to half a turn. */
function lineDirection(points: readonly Point[]): number {
  const mean = (of: (point: Point) => number) => points.reduce((sum, point) => sum + of(point), 0) / points.length
  const [x, y] = [mean((point) => point.x), mean((point) => point.y)]
  const across = mean((point) => (point.x - x) ** 2)
  const down = mean((point) => (point.y - y) ** 2)
  const both = mean((point) => (point.x - x) * (point.y - y))
  return (0.5 * Math.atan2(-2 * both, down - across) * 180) / Math.PI
}

/**
 * How far the body's line leans from the vertical, in degrees in (−90, 90], positive when it leans clockwise. The line is the
 * one closest to the points (ankle, hip, shoulder, head, or two of them), head up or head down. Throws RangeError below two.
 */
export function bodyTilt(body: readonly Point[], { up, pixel }: Reading): Measured {
  if (body.length < 2) throw new RangeError('a line of the body needs two points')
  const inputs = [...placed(body, pixel), up]
  const tilt = (values: readonly number[]) => {
    const line = lineDirection(body.map((_, index) => pointIn(values, index)))
    return wrap(line - (values.at(-1) ?? 0), 180)
  }
  return propagate(inputs, tilt, 180)
}

/**
 * Where the arm points, from the shoulder to the hand: degrees from the vertical in (−180, 180], positive clockwise as the
 * camera sees it. `down` measures from straight down, for the line at the entry.
 */
export function armAngle(shoulder: Point, hand: Point, { up, pixel }: Reading, down = false): Measured {
  const arm = (values: readonly number[]) =>
    wrap(direction(pointIn(values, 0), pointIn(values, 1)) - (values[4] ?? 0) - (down ? 180 : 0), 360)
  return propagate([...placed([shoulder, hand], pixel), up], arm, 360)
}

/** Degrees of one hour on the clock face that coaches use: common practice, no published source. */
export const degreesAnHour = 30

/** Degrees clockwise from straight up as an hour of the clock face, in (0, 12]: nought is twelve, −30 eleven, 90 three. */
export function clockHour(degrees: number): number {
  const hour = (((degrees / degreesAnHour) % 12) + 12) % 12
  return hour === 0 ? 12 : hour
}

/** The angle at the hip between shoulder and ankle, in degrees from 0 (folded) to 180 (straight). Needs no vertical. */
export function hipAngle(shoulder: Point, hip: Point, ankle: Point, pixel: number): Measured {
  const signed = propagate(
    placed([shoulder, hip, ankle], pixel),
    (values) => {
      const at = pointIn(values, 1)
      return wrap(direction(at, pointIn(values, 0)) - direction(at, pointIn(values, 2)), 360)
    },
    360,
  )
  return measuredAs(Math.abs(signed.value), signed.sd, 0, 180)
}

/** One of two frames between which a turn is measured: the trunk, how the frame is read, and its time in seconds. */
export interface Turned {
  readonly hip: Point
  readonly shoulder: Point
  readonly reading: Reading
  readonly time: Quantity
}

const inputsOf = (...both: readonly Turned[]): Quantity[] =>
  both.flatMap(({ hip, shoulder, reading, time }) => [...placed([hip, shoulder], reading.pixel), reading.up, time])

const trunk = (values: readonly number[]) => direction(pointIn(values, 0), pointIn(values, 1)) - (values[4] ?? 0)
const turnIn = (values: readonly number[]) => wrap(trunk(values.slice(6)) - trunk(values.slice(0, 6)), 360)

/**
 * How far the trunk turned between two frames, in degrees in (−180, 180], positive clockwise. Half a turn and more cannot be
 * told from the rest of the turn the other way.
 */
export const angleTurned = (first: Turned, second: Turned): Measured => propagate(inputsOf(first, second), turnIn, 360)

/**
 * How fast the trunk turns between two frames less than half a turn apart, in degrees a second, positive clockwise. Throws
 * RangeError when the second frame is not later than the first.
 */
export function rotationRate(first: Turned, second: Turned): Measured {
  if (second.time.value <= first.time.value) throw new RangeError('the second frame must be later than the first')
  return propagate(inputsOf(first, second), (values) => turnIn(values) / ((values[11] ?? 0) - (values[5] ?? 0)))
}
