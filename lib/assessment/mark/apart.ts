import type { Mark, MarkKey } from './mark'

/** How far one mark lies after another: milliseconds, and frames where the player learned how long one is shown. */
export interface Apart {
  readonly ms: number
  readonly frames: number | null
}

/** How far `other` lies after `mark`. Frames are counted by the longer of the two frame times, which passes none over. */
export function apart(mark: Mark, other: Mark): Apart {
  const ms = other.atMs - mark.atMs
  const frame = Math.max(mark.frameUs ?? 0, other.frameUs ?? 0)
  // Adding nought keeps a difference of none from being −0.
  return { ms, frames: frame === 0 ? null : Math.round((ms * 1000) / frame) + 0 }
}

/** One key of a table of marks: what each coach marked, in the order of the coaches, against the first of them who did. */
export interface MarkLine {
  readonly key: MarkKey
  readonly marks: readonly ({ readonly mark: Mark; readonly apart: Apart | null } | null)[]
}

/** Coaches' marks beside each other, a line for each key that somebody marked; differences are from the line's first mark. */
export function markTable(marks: readonly Mark[], keys: readonly MarkKey[], coaches: readonly string[]): MarkLine[] {
  return keys.flatMap((key): MarkLine[] => {
    const found = coaches.map((coach) => marks.find((one) => one.key === key && one.coach === coach) ?? null)
    const first = found.find((one) => one !== null)
    if (!first) return []
    const cells = found.map((mark) => mark && { mark, apart: mark === first ? null : apart(first, mark) })
    return [{ key, marks: cells }]
  })
}
