import type { Phase, PhaseSet } from '../../curriculum/model'
import { phaseSets } from '../../curriculum/model'

/** What a coach marks in a film: the frame at which a phase begins, or the one in which the diver is highest. */
export type MarkKey = Phase | 'highest point'

/** A mark that stands. Times are those of the film: the frame in milliseconds, how long one is shown in microseconds. */
export interface Mark {
  readonly coach: string
  readonly key: MarkKey
  readonly atMs: number
  /** Null where the player could not learn it. */
  readonly frameUs: number | null
}

/** A row as it was written: without a time it takes the coach's mark back. */
export interface MarkRow extends Omit<Mark, 'atMs'> {
  readonly atMs: number | null
}

/**
 * What there is to mark in a dive, in order: its phases, when it leaves the board where its phases do not tell (a twister
 * flies on through its twist), and its highest point where it rises at all.
 */
export function markKeysOf(set: PhaseSet): readonly MarkKey[] {
  const phases: readonly Phase[] = phaseSets[set]
  if (!phases.includes('take-off')) return phases
  return phases.flatMap((phase): MarkKey[] => {
    if (phase === 'flight') return ['flight', 'highest point']
    return phase === 'take-off' && !phases.includes('flight') ? [phase, 'flight', 'highest point'] : [phase]
  })
}

/** The marks that stand: of each coach and key the last row, unless that one took it back. Rows come oldest first. */
export function standingMarks(rows: readonly MarkRow[]): Mark[] {
  const last = new Map(rows.map((row) => [`${row.coach} ${row.key}`, row]))
  return [...last.values()].flatMap(({ atMs, ...row }) => (atMs === null ? [] : [{ ...row, atMs }]))
}

/** The longest film that a mark can be in: a day, in milliseconds. */
export const longestFilm = 86_400_000

/** Whether a frame can be shown that long, in microseconds: from a thousandth of a second to a second. */
export const isFrameTime = (us: number): boolean => us >= 1_000 && us <= 1_000_000
