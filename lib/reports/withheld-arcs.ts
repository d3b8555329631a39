/** What is withheld of a table of counts: cells by row and column, totals of rows and of columns, and the grand total. */
export interface Withheld {
  readonly cells: readonly (readonly boolean[])[]
  readonly rows: readonly boolean[]
  readonly columns: readonly boolean[]
  readonly total: boolean
}

/**
 * A figure of a table as an arc between two of its sums: every figure stands in one sum on either side, so that the tables
 * that agree with what is shared are the flows that agree with it (common practice in disclosure control of tables in two
 * ways). Row and column are −1 for totals.
 */
export interface Arc {
  readonly row: number
  readonly column: number
  readonly from: number
  readonly to: number
  readonly count: number
  readonly withheld: boolean
}

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0)

/** The figures of a table with its totals, as arcs. Nodes: a sum for each row, one for each column, and the two of the totals. */
export function arcsOf(cells: readonly (readonly number[])[], withheld: Withheld): Arc[] {
  const height = cells.length
  const width = cells[0]?.length ?? 0
  const [ofRows, ofColumns] = [height + width, height + width + 1]
  const columns = Array.from({ length: width }, (_, column) => column)
  const inner = cells.flatMap((counts, row) =>
    counts.map((count, column) => ({
      row,
      column,
      from: height + column,
      to: row,
      count,
      withheld: withheld.cells[row]?.[column] ?? false,
    })),
  )
  const ofRow = cells.map((counts, row) => ({
    row,
    column: -1,
    from: row,
    to: ofRows,
    count: sum(counts),
    withheld: withheld.rows[row] ?? false,
  }))
  const ofColumn = columns.map((column) => ({
    row: -1,
    column,
    from: ofColumns,
    to: height + column,
    count: sum(cells.map((counts) => counts[column] ?? 0)),
    withheld: withheld.columns[column] ?? false,
  }))
  const grand = {
    row: -1,
    column: -1,
    from: ofRows,
    to: ofColumns,
    count: sum(cells.map(sum)),
    withheld: withheld.total,
  }
  return [...inner, ...ofRow, ...ofColumn, grand]
}

/** A way round: along an arc its count grows without limit, against it it shrinks to nothing at most. */
interface Step {
  readonly arc: number
  readonly forward: boolean
}

/** A shortest way between two sums over withheld figures other than `without`; null when there is none. */
function wayBetween(arcs: readonly Arc[], counts: readonly number[], without: number, start: number, end: number) {
  const came = new Map<number, Step | null>([[start, null]])
  const waiting = [start]
  for (let node = waiting.shift(); node !== undefined && !came.has(end); node = waiting.shift()) {
    arcs.forEach((arc, index) => {
      if (!arc.withheld || index === without) return
      const forward = arc.from === node
      const next = forward ? arc.to : arc.from
      if ((forward || (arc.to === node && (counts[index] ?? 0) > 0)) && !came.has(next)) {
        came.set(next, { arc: index, forward })
        waiting.push(next)
      }
    })
  }
  const way: Step[] = []
  for (let node = end; node !== start; ) {
    const step = came.get(node)
    const arc = step && arcs[step.arc]
    if (!step || !arc) return null
    way.push(step)
    node = step.forward ? arc.from : arc.to
  }
  return way
}

/**
 * The most that a withheld figure could be for all that a reader sees, looked for up to `enough`: how far it can grow when
 * the other withheld figures make up for it and none falls below nothing. Exact: a greatest flow, by shortest ways.
 */
export function mostPossible(arcs: readonly Arc[], figure: Arc, enough: number): number {
  const own = arcs.findIndex((arc) => arc.from === figure.from && arc.to === figure.to)
  const counts = arcs.map((arc) => arc.count)
  let most = figure.count
  while (most < enough) {
    const way = wayBetween(arcs, counts, own, figure.to, figure.from)
    if (!way) break
    for (const { arc, forward } of way) counts[arc] = (counts[arc] ?? 0) + (forward ? 1 : -1)
    most++
  }
  return most
}
