import { exactly, propagate, type Quantity } from './measured'

/** A point placed on a paused frame, in pixels of the film: x to the right, y down. */
export interface Point {
  readonly x: number
  readonly y: number
}

/**
 * How the upright is known. A plumb line: anything that hangs or stands straight in the scene. A level: the edge of a board
 * *at rest*, as it lies in the picture. The picture's own: the camera is trusted to stand straight within `sd` degrees.
 */
export type Upright =
  | { readonly kind: 'plumb'; readonly top: Point; readonly bottom: Point }
  | { readonly kind: 'level'; readonly left: Point; readonly right: Point }
  | { readonly kind: 'picture'; readonly sd: number }

/** Two points whose distance in metres is known, at the diver's distance from the camera. */
export interface Scale {
  readonly from: Point
  readonly to: Point
  readonly metres: number
}

/** Coordinates of points, each with the standard deviation of placing it, in pixels. */
export const placed = (points: readonly Point[], pixel: number): Quantity[] =>
  points.flatMap(({ x, y }) => [
    { value: x, sd: pixel },
    { value: y, sd: pixel },
  ])

/** The point whose coordinates stand at `index` in a list of coordinates. Throws RangeError beyond its end. */
export function pointIn(values: readonly number[], index: number): Point {
  const [x, y] = values.slice(2 * index, 2 * index + 2)
  if (x === undefined || y === undefined) throw new RangeError(`there is no point ${index}`)
  return { x, y }
}

/** The direction from one point to another, in degrees clockwise from the picture's top, in (−180, 180]. */
export const direction = (from: Point, to: Point): number => (Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI

/**
 * Where up is in the picture, in degrees clockwise from its top, at most a quarter turn; `pixel` is the error of placing a point.
 * The upper end of a plumb line and the left one of an edge are told by where they lie, not by what they were called: a film is
 * not upside down, and ends that were swapped would turn everything by half a turn.
 */
export function uprightOf(upright: Upright, pixel: number): Quantity {
  if (upright.kind === 'picture') return { value: 0, sd: upright.sd }
  const isPlumb = upright.kind === 'plumb'
  const quarter = isPlumb ? 0 : 90
  const ends = isPlumb
    ? [upright.bottom, upright.top].sort((a, b) => b.y - a.y)
    : [upright.left, upright.right].sort((a, b) => a.x - b.x)
  return propagate(placed(ends, pixel), (values) => direction(pointIn(values, 0), pointIn(values, 1)) - quarter, 360)
}

/** Metres to a pixel. Throws RangeError when the two points are one, or the length is not positive. */
export function scaleOf({ from, to, metres }: Scale, pixel: number): Quantity {
  if (!(metres > 0)) throw new RangeError('the known length must be longer than nothing')
  if (from.x === to.x && from.y === to.y) throw new RangeError('the two ends of the known length are the same point')
  return propagate([...placed([from, to], pixel), exactly(metres)], (values) => {
    const [a, b] = [pointIn(values, 0), pointIn(values, 1)]
    return (values[4] ?? metres) / Math.hypot(b.x - a.x, b.y - a.y)
  })
}
