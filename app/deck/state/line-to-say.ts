import type { Fault, Rating } from '@/lib/curriculum/model'
import type { RatingRow, RatingSheet } from './rating-sheet'

/** What a coach can say out loud after the dive: what to keep, and the one thing to change next. */
export interface LineToSay {
  readonly keep: string | null
  readonly change: string | null
}

interface Seen {
  readonly ratings: Readonly<Record<string, Rating>>
  readonly faults: readonly string[]
}

const cueOf = (fault: Fault | undefined): string | undefined =>
  fault?.corrections.find(({ kind }) => kind === 'cue')?.text

/** The first cue of a fault; where it has none, what is seen. */
const sayFault = (fault: Fault): string => cueOf(fault) ?? fault.seen

/** What a criterion that fell short asks, without guessing at a fault: the cue of its only one, else what the asked rating looks like. */
function sayShort({ criterion, expected }: RatingRow, faults: ReadonlyMap<string, Fault>): string {
  const [only, ...more] = criterion.faults
  const cue = only && more.length === 0 ? cueOf(faults.get(only)) : undefined
  return cue ?? criterion.anchors[expected]
}

/** Faults of a critical criterion first: safety before form; otherwise in the order in which they were marked. */
function worstFault(
  sheet: RatingSheet,
  faults: ReadonlyMap<string, Fault>,
  marked: readonly string[],
): Fault | undefined {
  const grave = new Set(sheet.critical.flatMap(({ criterion }) => criterion.faults))
  const first = marked.find((key) => grave.has(key)) ?? marked[0]
  return first === undefined ? undefined : faults.get(first)
}

function best<Row>(rows: readonly Row[], score: (row: Row) => number): Row | undefined {
  return rows.reduce<Row | undefined>((top, row) => (top && score(top) >= score(row) ? top : row), undefined)
}

/**
 * The line to say from what was marked so far. To keep: what lies furthest above its expectation, then highest. To change:
 * the cue of a marked fault, else what the criterion furthest below asks, critical before others. Null where nothing was marked.
 */
export function lineToSay(sheet: RatingSheet, { ratings, faults }: Seen): LineToSay {
  const rated = sheet.rows.flatMap((row) => {
    const rating = ratings[row.criterion.key]
    return rating === undefined ? [] : [{ row, rating, over: rating - row.expected }]
  })
  const spoilt = new Set(faults)
  const clean = ({ criterion }: RatingRow) => !criterion.faults.some((fault) => spoilt.has(fault))
  const good = rated.filter(({ row, rating, over }) => over >= 0 && rating >= 2 && clean(row))
  const short = rated.filter(({ over }) => over < 0)
  const worst = best(short, ({ row, over }) => (row.criterion.critical ? 10 : 0) - over)
  const known = new Map(sheet.phases.flatMap((phase) => phase.faults).map((fault) => [fault.key, fault]))
  const fault = worstFault(sheet, known, faults)
  return {
    keep: best(good, ({ rating, over }) => over * 10 + rating)?.row.criterion.title ?? null,
    change: fault ? sayFault(fault) : worst ? sayShort(worst.row, known) : null,
  }
}
