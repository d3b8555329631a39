import { arcsOf, mostPossible, type Withheld } from './withheld-arcs'

/** A figure about fewer divers than this, none included, is withheld from whoever is not of their club. */
export const leastShared = 5

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0)
const small = (count: number): boolean => count < leastShared

/**
 * Which of some counts are withheld when their total is shared: the small ones, and of the others the smallest, until what
 * is withheld is more than one count and comes to at least five together. All of them when the total itself is small.
 */
export function withholdList(counts: readonly number[]): boolean[] {
  if (small(sum(counts))) return counts.map(() => true)
  const withheld = counts.map(small)
  const ascending = counts.map((_, index) => index).sort((a, b) => (counts[a] ?? 0) - (counts[b] ?? 0))
  for (const index of ascending) {
    const hidden = counts.filter((_, at) => withheld[at])
    if (hidden.length === 0 || (hidden.length > 1 && !small(sum(hidden)))) break
    withheld[index] = true
  }
  return withheld
}

/** Small cells and totals for which a reader could work out that they are small. */
const leaking = (cells: readonly (readonly number[])[], withheld: Withheld) =>
  arcsOf(cells, withheld).filter(
    (arc) => arc.withheld && small(arc.count) && small(mostPossible(arcsOf(cells, withheld), arc, leastShared)),
  )

const withCell = (withheld: Withheld, row: number, column: number): Withheld => ({
  ...withheld,
  cells: withheld.cells.map((cells, r) => cells.map((cell, c) => cell || (r === row && c === column))),
})

/** The table with one more cell withheld: of those that are shared, one that mends the leak, the smallest first. */
function withOneMore(cells: readonly (readonly number[])[], withheld: Withheld, leak: { row: number; column: number }) {
  const shared = cells.flatMap((counts, row) =>
    counts.flatMap((count, column) => (withheld.cells[row]?.[column] ? [] : [{ row, column, count }])),
  )
  const beside = ({ row, column }: { row: number; column: number }) => row === leak.row || column === leak.column
  shared.sort((a, b) => Number(beside(b)) - Number(beside(a)) || a.count - b.count)
  const leaks = leaking(cells, withheld).length
  const mending = shared.find(({ row, column }) => leaking(cells, withCell(withheld, row, column)).length < leaks)
  const next = mending ?? shared[0]
  return next ? withCell(withheld, next.row, next.column) : null
}

/**
 * What is withheld of a table of counts, rows by columns, that is shared with its totals. No small figure can be worked out
 * from what is left: for each, the counts that a reader cannot see could also be such that it is five or more. Which totals
 * are withheld depends on the totals alone, and their rows and columns are withheld whole, so that tables that count the
 * same divers by other rows can be laid beside each other.
 */
export function withholdTable(cells: readonly (readonly number[])[]): Withheld {
  const totals = cells.map(sum)
  const columnTotals = (cells[0] ?? []).map((_, column) => sum(cells.map((row) => row[column] ?? 0)))
  const rows = withholdList(totals)
  const columns = withholdList(columnTotals)
  let withheld: Withheld = {
    cells: cells.map((counts, r) => counts.map((count, c) => small(count) || rows[r] === true || columns[c] === true)),
    rows,
    columns,
    total: small(sum(totals)),
  }
  for (let leak = leaking(cells, withheld)[0]; leak; leak = leaking(cells, withheld)[0]) {
    const next = withOneMore(cells, withheld, leak)
    if (!next) break
    withheld = next
  }
  return withheld
}
