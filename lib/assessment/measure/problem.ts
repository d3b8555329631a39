import type { Frame, OnFrames, Slot } from './taken'
import { askedFor } from './taken'

/** Why nothing can be measured from what was placed. */
export type Problem =
  | { readonly kind: 'missing'; readonly slots: readonly Slot[] }
  | { readonly kind: 'too few' }
  | { readonly kind: 'outside'; readonly slot: Slot }
  | {
      readonly kind: 'too close'
      readonly one: Slot
      readonly other: Slot
      readonly apart: number
      readonly least: number
    }
  | { readonly kind: 'length' }
  | { readonly kind: 'side' }
  | { readonly kind: 'no board' }
  | { readonly kind: 'order'; readonly first: 'frame' | 'flight' | 'highest point' }
  | { readonly kind: 'frame unknown' }
  | { readonly kind: 'drop' }

/** Two points tell a direction only when they lie this many standard deviations of placing apart. */
export const leastApart = 5

const directions: Readonly<Record<OnFrames['kind'], readonly (readonly [Slot, Slot])[]>> = {
  tilt: [],
  arms: [['shoulder', 'hand']],
  hip: [
    ['hip', 'shoulder'],
    ['hip', 'ankle'],
  ],
  distance: [['length from', 'length to']],
  turn: [
    ['hip', 'shoulder'],
    ['later hip', 'later shoulder'],
  ],
}
const uprightLines: readonly (readonly [Slot, Slot])[] = [
  ['plumb bottom', 'plumb top'],
  ['edge left', 'edge right'],
]

/** The ends of the body's line: the two points of it that lie farthest from each other. */
function endsOfLine({ points }: OnFrames, names: readonly Slot[]): readonly [Slot, Slot] | null {
  let best: readonly [Slot, Slot] | null = null
  let most = -1
  for (const one of names)
    for (const other of names) {
      const [a, b] = [points[one], points[other]]
      const apart = a && b && one < other ? Math.hypot(a.x - b.x, a.y - b.y) : -1
      if (apart > most) [best, most] = [[one, other], apart]
    }
  return best
}

const isIn = ({ x, y }: { x: number; y: number }, { width, height }: Frame): boolean =>
  x >= 0 && x <= width && y >= 0 && y <= height

/** What stands against measuring what was placed on frames; null when nothing does. */
export function problemOf(taken: OnFrames): Problem | null {
  const { kind, points, frames, metres, pixel } = taken
  const asked = askedFor(kind, taken.upright)
  const missing = asked.filter(({ slot, optional }) => !optional && !points[slot])
  if (missing.length > 0) return { kind: 'missing', slots: missing.map(({ slot }) => slot) }
  const placed = asked.filter(({ slot }) => points[slot]).map(({ slot }) => slot)
  const body = asked.filter(({ slot, optional }) => optional && points[slot]).map(({ slot }) => slot)
  if (kind === 'tilt' && body.length < 2) return { kind: 'too few' }
  const [frame] = frames
  const outside = placed.find((slot) => {
    const point = points[slot]
    return !frame || !point || !isIn(point, frame)
  })
  if (outside) return { kind: 'outside', slot: outside }
  const line = endsOfLine(taken, body)
  for (const [one, other] of [...directions[kind], ...uprightLines, ...(line ? [line] : [])]) {
    const [a, b] = [points[one], points[other]]
    if (!a || !b || !placed.includes(one) || !placed.includes(other)) continue
    const [apart, least] = [Math.hypot(a.x - b.x, a.y - b.y), leastApart * pixel]
    if (apart < least) return { kind: 'too close', one, other, apart, least }
  }
  return kind === 'distance' && !(metres !== null && metres > 0 && metres <= 20) ? { kind: 'length' } : null
}
