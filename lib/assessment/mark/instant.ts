import { besidePhases, type MeasureInstant } from '../../curriculum/measure/model'
import type { Mark, MarkKey } from './mark'

/** Whether a frame is the one at which a measure is asked, or which marks would tell. */
export type AtInstant = 'yes' | 'no' | { readonly unmarked: readonly MarkKey[] }

/** How far from a mark a frame still counts as that of the mark, in milliseconds; the highest point is harder to see. Our judgement. */
const nearMark = 40
const nearTop = 100

const isBeside = (at: MeasureInstant): at is (typeof besidePhases)[number] => besidePhases.some((one) => one === at)

/**
 * Whether a frame of a film (milliseconds) is the one at which a measure is asked, by one coach's marks: within 40 ms of the mark
 * of a phase, or two of its frames; within 100 ms of the highest point. What is read in passing lies between that and the entry;
 * which of those frames it is, the points tell (`passesBoard`).
 */
export function isAt(at: MeasureInstant, frameMs: number, marks: readonly Mark[]): AtInstant {
  const markOf = (key: MarkKey) => marks.find((mark) => mark.key === key)
  const within = (key: MarkKey, least: number): AtInstant => {
    const mark = markOf(key)
    if (!mark) return { unmarked: [key] }
    return Math.abs(frameMs - mark.atMs) <= Math.max(least, (2 * (mark.frameUs ?? 0)) / 1000) ? 'yes' : 'no'
  }
  if (!isBeside(at)) return within(at, nearMark)
  if (at === 'highest point') return within(at, nearTop)
  // What is read off the whole flight has no frame of its own.
  if (at === 'whole flight') return 'no'
  const [top, entry] = [markOf('highest point'), markOf('entry')]
  if (!top || !entry) {
    const needed: readonly MarkKey[] = ['highest point', 'entry']
    return { unmarked: needed.filter((key) => !markOf(key)) }
  }
  return frameMs > top.atMs && frameMs < entry.atMs ? 'yes' : 'no'
}
