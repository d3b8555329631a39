import type { Criterion, Fault, Rating } from '@/lib/curriculum/model'
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

/** The first cue of a fault; where it has none, what is seen. */
function cueOf(fault: Fault): string {
  return fault.corrections.find(({ kind }) => kind === 'cue')?.text ?? fault.seen
}

/** Faults of a critical criterion first: safety before form; otherwise in the order in which they were marked. */
function worstFault(sheet: RatingSheet, marked: readonly string[]): Fault | undefined {
  const faults = new Map(sheet.phases.flatMap((phase) => phase.faults).map((fault) => [fault.key, fault]))
  const grave = new Set(sheet.critical.flatMap(({ criterion }) => criterion.faults))
  const first = marked.find((key) => grave.has(key)) ?? marked[0]
  return first === undefined ? undefined : faults.get(first)
}

function best<Row>(rows: readonly Row[], score: (row: Row) => number): Row | undefined {
  return rows.reduce<Row | undefined>((top, row) => (top && score(top) >= score(row) ? top : row), undefined)
}

/**
 * The line to say from what was marked so far. To keep: what lies furthest above its expectation, then highest. To change:
 * the cue of a marked fault, else the criterion furthest below, critical before others. Null where nothing was marked.
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
  const fault = worstFault(sheet, faults)
  return {
    keep: best(good, ({ rating, over }) => over * 10 + rating)?.row.criterion.title ?? null,
    change: fault ? cueOf(fault) : worst ? wanted(worst.row.criterion) : null,
  }
}

/** What the criterion asks, in its own words. */
const wanted = (criterion: Criterion): string => criterion.statement
