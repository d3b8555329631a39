import type { TimeRange } from '../moment'
import { type Clip, longest } from './match-clips'

/** Of a clip of several dives: seconds before the mark at which the moment begins, and after it at which it ends. */
const margin = { before: 30, after: 10 } as const

/** Seconds from the beginning of a clip to a mark at `at`; null where the clip has no time. Below 0: marked before it began. */
export const intoClip = ({ start }: Pick<Clip, 'start'>, at: number, behind: number): number | null =>
  start === null ? null : (at - start - behind) / 1000

/**
 * The moment of one dive in a clip, seconds. What the link names; else the whole of a short clip of one dive; else from half a
 * minute before its mark to ten seconds after. `shared`: other dives are in the clip too.
 */
export function clipRange(
  clip: Pick<Clip, 'start' | 'end'> & { readonly range: TimeRange | null },
  into: number | null,
  shared: boolean,
): TimeRange {
  if (clip.range) return clip.range
  if (into === null) return { start: 0, end: null }
  const length = clip.start !== null && clip.end !== null ? (clip.end - clip.start) / 1000 : null
  const short = (length ?? into) <= longest / 1000
  if (short && !shared) return { start: 0, end: null }
  const mark = Math.max(0, length === null ? into : Math.min(into, length))
  const end = Math.round(mark) + margin.after
  return { start: Math.max(0, Math.round(mark) - margin.before), end: length === null ? end : Math.min(end, length) }
}
