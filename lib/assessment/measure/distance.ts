import type { Reading } from './angles'
import { type Measured, measuredAs, propagate, type Quantity } from './measured'
import { type Point, placed, pointIn } from './picture'

/**
 * How far a point of the body is from the board's tip, measured level, in metres from 0. The level distance is never longer
 * than the straight one, so it makes no dive look farther from the board than it was. `scale` is metres to a pixel (`scaleOf`).
 */
export function distanceFromTip(tip: Point, body: Point, { up, pixel }: Reading, scale: Quantity): Measured {
  const inputs = [...placed([tip, body], pixel), up, scale]
  const sided = propagate(
    inputs,
    (values) => levelOffset(pointIn(values, 0), pointIn(values, 1), values[4] ?? 0) * (values[5] ?? 0),
  )
  return measuredAs(Math.abs(sided.value), sided.sd, 0)
}

/** Pixels from one point to another along the level, positive to the right of upright. */
function levelOffset(from: Point, to: Point, upDegrees: number): number {
  const up = (upDegrees * Math.PI) / 180
  return (to.x - from.x) * Math.cos(up) + (to.y - from.y) * Math.sin(up)
}
