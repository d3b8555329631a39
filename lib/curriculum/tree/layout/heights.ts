import type { BandSpan, Columns, Order } from './model'

/** Room that a band keeps over and under its labels, and between two of them. */
export interface Spacing {
  readonly top: number
  readonly bottom: number
  readonly between: number
}

/** Stops of one band and column with the distance that each keeps from the first. */
interface Cell {
  readonly stops: readonly number[]
  readonly offsets: readonly number[]
  readonly above: number
  readonly below: number
  readonly band: number
}

const sweeps = 24

/** Non-decreasing values nearest to `wanted` by weighted least squares: pooling neighbours that are out of order. */
export function isotonic(wanted: readonly number[], weights: readonly number[]): number[] {
  const pools: { value: number; weight: number; size: number }[] = []
  wanted.forEach((value, index) => {
    let pool = { value, weight: weights[index] ?? 1, size: 1 }
    for (let last = pools.at(-1); last && last.value > pool.value; last = pools.at(-1)) {
      pools.pop()
      const weight = last.weight + pool.weight
      const mean = (last.value * last.weight + pool.value * pool.weight) / weight
      pool = { value: mean, weight, size: last.size + pool.size }
    }
    pools.push(pool)
  })
  return pools.flatMap(({ value, size }) => new Array<number>(size).fill(value))
}

function cellsOf({ stops }: Columns, order: Order, between: number): Cell[] {
  return order.flatMap((column) => {
    const bands = new Map<number, number[]>()
    for (const stop of column) {
      const band = stops[stop]?.band ?? 0
      bands.set(band, [...(bands.get(band) ?? []), stop])
    }
    return [...bands].map(([band, inside]): Cell => {
      let down = 0
      const offsets = inside.map((stop, index) => {
        const previous = stops[inside[index - 1] ?? -1]
        if (previous) down += previous.below + between + (stops[stop]?.above ?? 0)
        return down
      })
      return {
        stops: inside,
        offsets,
        above: stops[inside[0] ?? -1]?.above ?? 0,
        below: down + (stops[inside.at(-1) ?? -1]?.below ?? 0),
        band,
      }
    })
  })
}

function spanBands(cells: readonly Cell[], spacing: readonly Spacing[]): BandSpan[] {
  let down = 0
  return spacing.map(({ top, bottom }, band) => {
    const fullest = Math.max(0, ...cells.filter((cell) => cell.band === band).map(({ above, below }) => above + below))
    const span = { top: down, bottom: down + top + fullest + bottom }
    down = span.bottom
    return span
  })
}

/**
 * The height of each stop and of the bands. A band is as high as its fullest column; inside it the stops draw towards
 * the mean of their neighbours, keeping their order and distance (isotonic regression).
 */
export function settleHeights(
  columns: Columns,
  order: Order,
  spacing: readonly Spacing[],
): { readonly bands: readonly BandSpan[]; readonly heights: readonly number[] } {
  const cells = cellsOf(columns, order, spacing[0]?.between ?? 0)
  const bands = spanBands(cells, spacing)
  const heights = new Array<number>(columns.stops.length).fill(0)
  const near: number[][] = columns.stops.map(() => [])
  for (const [from, to] of columns.segments) {
    near[from]?.push(to)
    near[to]?.push(from)
  }
  const settle = (cell: Cell, wanted: (stop: number, offset: number) => number): void => {
    const span = bands[cell.band]
    const room = spacing[cell.band]
    if (!span || !room) return
    const lowest = span.top + room.top + cell.above
    const highest = span.bottom - room.bottom - cell.below
    const free = isotonic(
      cell.stops.map((stop, index) => wanted(stop, cell.offsets[index] ?? 0) - (cell.offsets[index] ?? 0)),
      cell.stops.map((stop) => Math.max(1, near[stop]?.length ?? 0)),
    )
    cell.stops.forEach((stop, index) => {
      heights[stop] = Math.min(highest, Math.max(lowest, free[index] ?? lowest)) + (cell.offsets[index] ?? 0)
    })
  }
  for (const cell of cells) {
    const span = bands[cell.band] ?? { top: 0, bottom: 0 }
    settle(cell, (_, offset) => (span.top + span.bottom - cell.below) / 2 + offset)
  }
  for (let sweep = 0; sweep < sweeps; sweep += 1)
    for (const cell of sweep % 2 === 0 ? cells : [...cells].reverse())
      settle(cell, (stop) => {
        const others = near[stop] ?? []
        if (others.length === 0) return heights[stop] ?? 0
        return others.reduce((sum, other) => sum + (heights[other] ?? 0), 0) / others.length
      })
  return { bands, heights }
}
