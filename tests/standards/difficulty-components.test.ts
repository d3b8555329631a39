import { expect, it } from 'vitest'
import {
  approach,
  flightBands,
  flightPosition,
  flying,
  somersaults,
  twists,
  unnaturalEntry,
} from '../../lib/curriculum/dives/components'
import { type Direction, positions } from '../../lib/curriculum/dives/model'
import source from '../fixtures/standards/difficulty/components.json'

/**
 * The cells of the World Aquatics springboard components (Appendix 8), one by one as they were collected; `meta` of the
 * fixture says which were read in the FINA tables, which in a transcription only, and which agree with memory.
 */
interface Cell {
  readonly table: string
  readonly key: string
  /** Tenths; null where the table has a dash. */
  readonly expected: number | null
  /** What our table holds at each count of half somersaults that the cell covers. */
  readonly ours: readonly (number | null | undefined)[]
}

const directions = ['forward', 'back', 'reverse', 'inward'] as const satisfies readonly Direction[]
const heights = [1, 3] as const

/** `1.5` → 3 half somersaults or half twists. */
const halves = (key: string) => Number(key) * 2

/** `2.5-3.5` → 5, 6, 7 half somersaults; `2.5` → 5. */
function covered(band: string): number[] {
  const [from = '', to = from] = band.split('-')
  return Array.from({ length: halves(to) - halves(from) + 1 }, (_, index) => halves(from) + index)
}

/** The cells of one row; a key is a band of somersaults, or twists with a band of somersaults. */
function cells(
  table: string,
  row: Readonly<Record<string, { readonly value: number | null }>>,
  read: (halfSomersaults: number, halfTwists: number) => number | null | undefined,
): Cell[] {
  return Object.entries(row).map(([key, { value }]) => {
    const [count = '', band = table.startsWith('C') ? '0.5-4.5' : count] = key.split('@')
    const ours = covered(band).map((at) => read(at, halves(count)))
    return { table, key, expected: value === null ? null : Math.round(value * 10), ours }
  })
}

function bandOf(halfSomersaults: number) {
  const band = flightBands[halfSomersaults]
  if (band === undefined) throw new Error(`no band for ${halfSomersaults} half somersaults`)
  return band
}

const { B_flight_position: flights, E_unnatural_entry: entries } = source
const all: readonly Cell[] = [
  ...heights.flatMap((height) =>
    cells(`A at ${height} m`, source.A_somersaults[`${height}m`], (at) => somersaults[height][at]),
  ),
  ...directions.flatMap((way) => [
    ...positions.flatMap((position) =>
      cells(`B ${way} ${position}`, flights[position][way], (at) => flightPosition[position][way][bandOf(at)]),
    ),
    ...cells(`fly ${way}`, flights.fly_add[way], (at) => flying[way][bandOf(at)]),
    ...cells(
      `C ${way}`,
      source.C_twists[way],
      (at, count) => twists[way][count - 1]?.find((step) => at <= step.until)?.tenths,
    ),
    ...heights.flatMap((height) =>
      cells(`D ${way} at ${height} m`, source.D_approach[`${height}m`][way], (at) => {
        const { low, from, high } = approach[height][way]
        return at < from ? low : high
      }),
    ),
  ]),
  ...(['forward', 'inward'] as const).flatMap((way) =>
    cells(`E ${way}`, entries.forward_inward, (at) => unnaturalEntry[way][at]),
  ),
  ...(['back', 'reverse'] as const).flatMap((way) =>
    cells(`E ${way}`, entries.back_reverse, (at) => unnaturalEntry[way][at]),
  ),
]

it.each(all)('$table, $key: $expected', ({ expected, ours }) => {
  expect(ours.length).toBeGreaterThan(0)
  expect(new Set(ours)).toEqual(new Set([expected]))
})

it('compares all 189 cells that hold a value; E stands once for two directions', () => {
  const held = all.filter(({ expected }) => expected !== null)
  expect(held.length - Object.keys(entries.back_reverse).length * 2).toBe(189)
})
