import { cutIntoColumns } from './columns'
import { type Spacing, settleHeights } from './heights'
import type { Block, Columns, Layout, Link } from './model'
import { orderColumns } from './order'

/** Clear room between an edge's end and the label that it meets. */
const clear = 5
/** Least width of the gap between two columns, and what it grows by with each edge in it. */
const gap = { least: 26, each: 2, most: 56 }

const round = (value: number): number => Math.round(value * 10) / 10

function placeColumns({ count, stops, segments }: Columns): { readonly left: number[]; readonly right: number[] } {
  const left: number[] = []
  const right: number[] = []
  let x = 0
  for (let column = 0; column < count; column += 1) {
    const widths = stops.filter((stop) => stop.column === column).map(({ block }) => block?.width ?? 0)
    const leaving = segments.filter(([from]) => stops[from]?.column === column).length
    left.push(x)
    right.push(x + Math.max(0, ...widths))
    x += Math.max(0, ...widths) + Math.min(gap.most, gap.least + gap.each * leaving)
  }
  return { left, right }
}

/**
 * Draws a graph without circles from left to right in horizontal bands: no label over another, no edge under a label,
 * every edge rightwards, the same drawing for the same input. `bands` says what room each band keeps, from the top.
 * Throws RangeError for a circle or a link to an unknown block.
 */
export function layOut(blocks: readonly Block[], links: readonly Link[], bands: readonly Spacing[]): Layout {
  const columns = cutIntoColumns(blocks, links)
  const settled = settleHeights(columns, orderColumns(columns), bands)
  const heights = settled.heights.map(round)
  const { left, right } = placeColumns(columns)
  const draw = (route: readonly number[]): string =>
    route
      .map((index, step) => {
        const stop = columns.stops[index]
        const y = heights[index] ?? 0
        const column = stop?.column ?? 0
        const end = right[column] ?? 0
        const leaves = Math.min(end, (left[column] ?? 0) + (stop?.block?.lead ?? 0) + clear)
        if (step === 0) return `M${round(leaves)} ${y}H${round(end)}`
        const from = right[column - 1] ?? 0
        const to = (left[column] ?? 0) - (stop?.block ? clear : 0)
        const bend = round((from + to) / 2)
        const curve = `C${bend} ${heights[route[step - 1] ?? 0] ?? 0} ${bend} ${y} ${round(to)} ${y}`
        return stop?.block ? curve : `${curve}H${round(end)}`
      })
      .join('')
  return {
    width: Math.ceil(Math.max(0, ...right)),
    height: Math.ceil(settled.bands.at(-1)?.bottom ?? 0),
    bands: settled.bands,
    spots: blocks.map(({ key }, index) => {
      const column = columns.stops[index]?.column ?? 0
      return { key, column, x: round(left[column] ?? 0), y: heights[index] ?? 0 }
    }),
    links: links.map((link, index) => ({ ...link, path: draw(columns.routes[index] ?? []) })),
  }
}
