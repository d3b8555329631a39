import type { Block, Columns, Link, Stop } from './model'

/** Half the room that an edge takes where it passes a column. */
const passing = 7

/**
 * The column of each block: the longest way to it from the left. What rests on nothing stands just before the first
 * block that rests on it. Throws RangeError when the links run in a circle.
 */
export function columnsOf(keys: readonly string[], links: readonly Link[]): ReadonlyMap<string, number> {
  const columns = new Map<string, number>()
  const open = new Set<string>()
  const before = new Map(keys.map((key) => [key, links.filter(({ to }) => to === key).map(({ from }) => from)]))
  const place = (key: string): number => {
    const known = columns.get(key)
    if (known !== undefined) return known
    if (open.has(key)) throw new RangeError(`"${key}" comes before itself`)
    open.add(key)
    const column = Math.max(-1, ...(before.get(key) ?? []).map(place)) + 1
    columns.set(key, column)
    return column
  }
  for (const key of keys) place(key)
  for (const root of keys.filter((key) => before.get(key)?.length === 0)) {
    const after = links.filter(({ from }) => from === root).map(({ to }) => columns.get(to) ?? 0)
    if (after.length > 0) columns.set(root, Math.min(...after) - 1)
  }
  return columns
}

/**
 * Cuts the links into segments between neighbouring columns. Where a link passes a column it takes a stop, in the band
 * of its source for the first half of its way and in that of its target for the rest; links of one source share stops.
 */
export function cutIntoColumns(blocks: readonly Block[], links: readonly Link[]): Columns {
  const columns = columnsOf(
    blocks.map(({ key }) => key),
    links,
  )
  const columnOf = (key: string): number => columns.get(key) ?? 0
  const stops: Stop[] = blocks.map((block) => ({ ...block, block, column: columnOf(block.key) }))
  const indexOf = new Map(blocks.map(({ key }, index) => [key, index]))
  const passes = new Map<string, number>()
  const segments = new Map<string, readonly [number, number]>()

  const pass = (from: string, column: number, band: number): number => {
    const name = `${column} ${band} ${from}`
    const known = passes.get(name)
    if (known !== undefined) return known
    const index = stops.push({ block: null, column, band, above: passing, below: passing }) - 1
    passes.set(name, index)
    return index
  }
  const routes = links.map(({ from, to }) => {
    const [start, end] = [indexOf.get(from), indexOf.get(to)]
    if (start === undefined || end === undefined) throw new RangeError(`"${from}" → "${to}" leads nowhere`)
    const [first, last] = [columnOf(from), columnOf(to)]
    const between = Array.from({ length: last - first - 1 }, (_, step) => {
      const near = step + 1 <= (last - first) / 2 ? start : end
      return pass(from, first + 1 + step, stops[near]?.band ?? 0)
    })
    const route = [start, ...between, end]
    route.slice(1).forEach((stop, index) => {
      const previous = route[index] ?? start
      segments.set(`${previous} ${stop}`, [previous, stop])
    })
    return route
  })
  const count = Math.max(0, ...stops.map(({ column }) => column + 1))
  return { count, stops, segments: [...segments.values()], routes }
}
