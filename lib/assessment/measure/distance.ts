import type { Reading } from './angles'
import { type Measured, propagate, type Quantity } from './measured'
import { type Point, placed, pointIn } from './picture'

/** Where the water lies from the tip: to the right of upright in the picture, or to the left. */
export type WaterSide = 1 | -1

/** Pixels from one point to another: along the level, positive to the right of upright, and upwards. */
function offset(from: Point, to: Point, upDegrees: number): { readonly level: number; readonly rise: number } {
  const [c, s] = [Math.cos((upDegrees * Math.PI) / 180), Math.sin((upDegrees * Math.PI) / 180)]
  const [right, down] = [to.x - from.x, to.y - from.y]
  return { level: right * c + down * s, rise: right * s - down * c }
}

/**
 * Which side of the tip is the water, by a point on the board further in; null where that point does not tell, for it lies less
 * than `least` pixels from the tip along the level, or more above or below it than beside it.
 */
export function waterSide(board: Point, tip: Point, up: Quantity, least: number): WaterSide | null {
  const { level, rise } = offset(board, tip, up.value)
  if (Math.abs(level) < least || Math.abs(level) < Math.abs(rise)) return null
  return level > 0 ? 1 : -1
}

const fromTip = (
  tip: Point,
  body: Point,
  { up, pixel }: Reading,
  scale: Quantity,
  of: (apart: ReturnType<typeof offset>) => number,
): Measured =>
  propagate(
    [...placed([tip, body], pixel), up, scale],
    (values) => of(offset(pointIn(values, 0), pointIn(values, 1), values[4] ?? 0)) * (values[5] ?? 0),
  )

/**
 * How far a point of the body is from the board's tip, measured level, in metres: over the water above nought, and below it
 * behind the tip, over the board. The level distance is never longer than the straight one, so it makes no dive look farther
 * from the board than it was. `scale` is metres to a pixel (`scaleOf`).
 */
export const distanceFromTip = (
  tip: Point,
  body: Point,
  side: WaterSide,
  reading: Reading,
  scale: Quantity,
): Measured => fromTip(tip, body, reading, scale, ({ level }) => side * level)

/** How high a point of the body is over the board's tip, in metres; negative below it. */
export const heightOverTip = (tip: Point, body: Point, reading: Reading, scale: Quantity): Measured =>
  fromTip(tip, body, reading, scale, ({ rise }) => rise)

/**
 * Within how many metres above or below the tip a point of the body passes the level of the board. Our judgement, held on
 * simulated dives: at 25 frames a second one frame at least lies within, and none that does is off by more than about 0.1 m.
 */
const passingWithin = 0.2

/** Whether a point that is so many metres over the tip passes the level of the board. */
export const passesBoard = (height: number): boolean => Math.abs(height) <= passingWithin
