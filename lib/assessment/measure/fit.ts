import { exactly, type Quantity } from './measured'
import { type Point, scaleOf, uprightOf } from './picture'
import type { OnFrames, Slot } from './taken'

/** What can be brought together when one picture is laid over another. */
export const coincidences = ['tip', 'hip'] as const
export type Coincidence = (typeof coincidences)[number]

/**
 * What brings a second picture onto a first: its point `from` to the first's point `to`, so many pixels of the first to one of
 * its own, and where up is in each, in degrees clockwise from the picture's top.
 */
export interface Fit {
  readonly place: Coincidence
  readonly from: Point
  readonly to: Point
  /** Null where no length is known in both. */
  readonly scale: number | null
  readonly up: { readonly first: number; readonly second: number }
}

const placedIn = (taken: readonly OnFrames[], slot: Slot): Point | null =>
  taken.findLast(({ points }) => points[slot])?.points[slot] ?? null

/** Metres to a pixel, by the last length that was placed; null without one. */
function metresToPixel(taken: readonly OnFrames[]): number | null {
  for (const { points, metres, pixel } of [...taken].reverse()) {
    const [from, to] = [points['length from'], points['length to']]
    if (from && to && metres !== null && metres > 0 && (from.x !== to.x || from.y !== to.y))
      return scaleOf({ from, to, metres }, pixel).value
  }
  return null
}

/** Where up is, by the last plumb line or edge that was placed; the picture's own top without one. */
function upIn(taken: readonly OnFrames[]): Quantity {
  for (const { points, pixel, upright } of [...taken].reverse()) {
    const [top, bottom] = [points['plumb top'], points['plumb bottom']]
    const [left, right] = [points['edge left'], points['edge right']]
    if (upright === 'plumb' && top && bottom) return uprightOf({ kind: 'plumb', top, bottom }, pixel)
    if (upright === 'level' && left && right) return uprightOf({ kind: 'level', left, right }, pixel)
  }
  return exactly(0)
}

/** The hips of two measures of the same kind, or of any two. */
function hips(first: readonly OnFrames[], second: readonly OnFrames[]): readonly [Point, Point] | null {
  const alike = first.flatMap((one) => {
    const other = second.find(({ kind, down }) => kind === one.kind && down === one.down)
    const [a, b] = [one.points.hip, other?.points.hip]
    return a && b ? [[a, b] as const] : []
  })
  const [a, b] = [placedIn(first, 'hip'), placedIn(second, 'hip')]
  return alike[0] ?? (a && b ? [a, b] : null)
}

/** All that was placed in both pictures and can be brought together, by the measures of each, oldest first. */
export function fitsOf(first: readonly OnFrames[], second: readonly OnFrames[]): Fit[] {
  const [one, other] = [metresToPixel(first), metresToPixel(second)]
  const scale = one !== null && other !== null ? other / one : null
  const up = { first: upIn(first).value, second: upIn(second).value }
  const [tip, otherTip] = [placedIn(first, 'tip'), placedIn(second, 'tip')]
  const hip = hips(first, second)
  return [
    ...(tip && otherTip ? [{ place: 'tip' as const, from: otherTip, to: tip, scale, up }] : []),
    ...(hip ? [{ place: 'hip' as const, from: hip[1], to: hip[0], scale, up }] : []),
  ]
}
