import type { OnFrames, Slot } from '@/lib/assessment/measure/taken'
import { slotName } from '@/lib/assessment/measure/wording-taken'
import type { DrawnLine, DrawnPoint } from './points-overlay'

const body: Readonly<Record<OnFrames['kind'], readonly (readonly Slot[])[]>> = {
  tilt: [['ankle', 'hip', 'shoulder', 'head']],
  arms: [['shoulder', 'hand']],
  hip: [['shoulder', 'hip', 'ankle']],
  distance: [['tip', 'near']],
  turn: [
    ['hip', 'shoulder'],
    ['later hip', 'later shoulder'],
  ],
}
const aids: readonly (readonly [Slot, Slot])[] = [
  ['board', 'tip'],
  ['length from', 'length to'],
  ['plumb bottom', 'plumb top'],
  ['edge left', 'edge right'],
]

type Points = OnFrames['points']

/** The lines between the points of a measure: the body's full, what it is held against dashed. */
export function linesOf(kind: OnFrames['kind'], points: Points): DrawnLine[] {
  const along = (names: readonly Slot[], dashed: boolean): DrawnLine[] => {
    const found = names.flatMap((slot) => (points[slot] ? [{ slot, at: points[slot] }] : []))
    return found.slice(1).flatMap(({ slot, at }, index) => {
      const before = found[index]
      return before ? [{ key: `${before.slot} ${slot}`, from: before.at, to: at, dashed }] : []
    })
  }
  return [...aids.flatMap((pair) => along(pair, true)), ...body[kind].flatMap((names) => along(names, false))]
}

/** Points by their names, as they are drawn. */
export const pointsOf = (points: Points, chosen: Slot | null = null): DrawnPoint[] =>
  (Object.keys(points) as Slot[]).flatMap((slot) => {
    const at = points[slot]
    return at ? [{ key: slot, ...at, label: slotName[slot], chosen: slot === chosen }] : []
  })
