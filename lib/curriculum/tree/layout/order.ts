import type { Columns, Order } from './model'

/** Neighbours of each stop in the columns to its left and right. */
interface Sides {
  readonly left: readonly (readonly number[])[]
  readonly right: readonly (readonly number[])[]
}

const sweeps = 40

function sidesOf({ stops, segments }: Columns): Sides {
  const left: number[][] = stops.map(() => [])
  const right: number[][] = stops.map(() => [])
  for (const [from, to] of segments) {
    right[from]?.push(to)
    left[to]?.push(from)
  }
  return { left, right }
}

const placesIn = (order: Order, stops: number): number[] => {
  const places = new Array<number>(stops).fill(0)
  for (const column of order) for (const [index, stop] of column.entries()) places[stop] = index
  return places
}

/** How often the ends of `upper` and `lower` lie the wrong way round, when `upper` stands over `lower`. */
const crossingsOf = (upper: readonly number[], lower: readonly number[], places: readonly number[]): number =>
  upper.reduce((sum, a) => sum + lower.filter((b) => (places[b] ?? 0) < (places[a] ?? 0)).length, 0)

/** Crossings between neighbouring columns, with each stop's edges to the right. */
export function countCrossings(columns: Columns, order: Order): number {
  const { right } = sidesOf(columns)
  const places = placesIn(order, columns.stops.length)
  return order.reduce((sum, column) => {
    const ends = column.map((stop) => right[stop] ?? [])
    return sum + ends.reduce((part, upper, index) => part + crossingsOf(upper, ends.slice(index + 1).flat(), places), 0)
  }, 0)
}

/** Sorts a column by bands, and inside a band by the mean place of the neighbours on one side. */
function sortColumn(
  columns: Columns,
  column: readonly number[],
  beside: readonly (readonly number[])[],
  places: readonly number[],
) {
  const mean = (stop: number): number => {
    const near = beside[stop] ?? []
    if (near.length === 0) return places[stop] ?? 0
    return near.reduce((sum, other) => sum + (places[other] ?? 0), 0) / near.length
  }
  const band = (stop: number): number => columns.stops[stop]?.band ?? 0
  return [...column].sort((a, b) => band(a) - band(b) || mean(a) - mean(b) || (places[a] ?? 0) - (places[b] ?? 0))
}

/** Swaps neighbours of one band wherever that undoes crossings. */
function swapNeighbours(columns: Columns, order: number[][], { left, right }: Sides): void {
  const places = placesIn(order, columns.stops.length)
  const cost = (a: number, b: number): number =>
    crossingsOf(left[a] ?? [], left[b] ?? [], places) + crossingsOf(right[a] ?? [], right[b] ?? [], places)
  for (const column of order)
    for (let index = 0; index + 1 < column.length; index += 1) {
      const [a, b] = [column[index] ?? 0, column[index + 1] ?? 0]
      if (columns.stops[a]?.band !== columns.stops[b]?.band || cost(b, a) >= cost(a, b)) continue
      column[index] = b
      column[index + 1] = a
      places[b] = index
      places[a] = index + 1
    }
}

/**
 * The order of the stops in each column, few crossings and bands never mixed: sweeps of barycentres inside the bands,
 * first from the left, then from the right, with swaps of neighbours; the best order met is kept.
 */
export function orderColumns(columns: Columns): Order {
  const sides = sidesOf(columns)
  let order: number[][] = Array.from({ length: columns.count }, () => [])
  columns.stops.forEach(({ column }, index) => void order[column]?.push(index))
  order = order.map((column) => sortColumn(columns, column, [], placesIn(order, columns.stops.length)))
  let best = order.map((column) => [...column])
  let fewest = countCrossings(columns, best)
  for (let sweep = 0; sweep < sweeps && fewest > 0; sweep += 1) {
    const beside = sweep % 2 === 0 ? sides.left : sides.right
    const along = [...order.keys()]
    for (const index of sweep % 2 === 0 ? along : along.reverse())
      order[index] = sortColumn(columns, order[index] ?? [], beside, placesIn(order, columns.stops.length))
    swapNeighbours(columns, order, sides)
    const crossings = countCrossings(columns, order)
    if (crossings < fewest) {
      fewest = crossings
      best = order.map((column) => [...column])
    }
  }
  return best
}
