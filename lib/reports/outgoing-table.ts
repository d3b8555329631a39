import type { CsvCell } from './csv'
import { withholdTable } from './withhold'

/** Stands where a figure is about fewer than five divers of other clubs, or would give one away. */
export const withheldMark = 'withheld'

/** A row of a table that leaves the programme's pages: counts of divers, each diver in one of them. */
export interface OutgoingRow {
  /** What the row stands for, in words. */
  readonly label: string
  /** How many divers stand in each figure. */
  readonly counts: readonly number[]
  /** How many of those belong to a club of whoever asks. */
  readonly own: readonly number[]
  /** Whether the row stands for such a club: of it nothing is withheld. */
  readonly ownClub: boolean
}

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0)
const minus = (counts: readonly number[], own: readonly number[]) => counts.map((count, at) => count - (own[at] ?? 0))
const shown = (count: number, withheld: boolean | undefined): CsvCell => (withheld ? withheldMark : count)

/**
 * Rows with their totals, and the totals of the columns last, with what must be withheld of them withheld. What the reader
 * knows of her own clubs is taken off before it is judged, so that a difference gives nothing away; their own rows are shown
 * as they are.
 */
export function outgoingTable(rows: readonly OutgoingRow[], totalLabel: string): CsvCell[][] {
  const judged = rows.filter((row) => !row.ownClub)
  const withheld = withholdTable(judged.map(({ counts, own }) => minus(counts, own)))
  const lines = rows.map((row): CsvCell[] => {
    const at = judged.indexOf(row)
    const cells = row.counts.map((count, column) => shown(count, at >= 0 && withheld.cells[at]?.[column]))
    return [row.label, ...cells, shown(sum(row.counts), at >= 0 && withheld.rows[at])]
  })
  const columns = (rows[0]?.counts ?? []).map((_, column) => sum(rows.map(({ counts }) => counts[column] ?? 0)))
  const totals = columns.map((count, column) => shown(count, withheld.columns[column]))
  return [...lines, [totalLabel, ...totals, shown(sum(columns), withheld.total)]]
}
