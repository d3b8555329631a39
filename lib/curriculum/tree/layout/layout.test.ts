import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { walkPath } from '@/tests/support/walk-path'
import { cutIntoColumns } from './columns'
import type { Spacing } from './heights'
import { isotonic } from './heights'
import { layOut } from './layout'
import type { Block, Layout, Link } from './model'
import { countCrossings, orderColumns } from './order'

const room: Spacing = { top: 20, bottom: 12, between: 8 }
const block = (key: string, band: number, width = 120): Block => ({
  key,
  band,
  width,
  lead: 60,
  above: 11,
  below: 35,
})

/** Graphs without circles: every link goes from a lower number to a higher one. */
const graphsOf = (few: number, many: number) =>
  fc
    .record({
      bands: fc.integer({ min: 1, max: 8 }),
      sizes: fc.array(fc.record({ band: fc.nat(7), width: fc.integer({ min: 60, max: 170 }) }), {
        minLength: few,
        maxLength: many,
      }),
      ends: fc.array(fc.tuple(fc.nat(many - 1), fc.nat(many - 1)), { minLength: few, maxLength: 2 * many }),
    })
    .map(({ bands, sizes, ends }) => {
      const blocks = sizes.map(({ band, width }, index) => block(`n${index}`, band % bands, width))
      const pairs = new Map(
        ends
          .map(([a, b]) => [Math.min(a, b) % sizes.length, Math.max(a, b) % sizes.length] as const)
          .filter(([a, b]) => a < b)
          .map(([a, b]) => [`${a} ${b}`, { from: `n${a}`, to: `n${b}` }]),
      )
      return { blocks, links: [...pairs.values()], bands: new Array<Spacing>(bands).fill(room) }
    })

const graphs = graphsOf(1, 40)
/** A family at its largest: some ninety labels and up to as many as two edges each. */
const families = graphsOf(80, 90)

function boxes(blocks: readonly Block[], layout: Layout) {
  return layout.spots.flatMap((spot) => {
    const { width, above, below, band } = blocks.find(({ key }) => key === spot.key) ?? block('', 0)
    return [{ ...spot, band, right: spot.x + width, top: spot.y - above, bottom: spot.y + below }]
  })
}

describe('a drawn graph', () => {
  it.each([
    ['any graph', graphs, 100],
    ['a whole family', families, 15],
  ])('lays no label of %s over another', (_, drawn, numRuns) => {
    fc.assert(
      fc.property(drawn, ({ blocks, links, bands }) => {
        const all = boxes(blocks, layOut(blocks, links, bands))
        for (const [index, a] of all.entries())
          for (const b of all.slice(index + 1)) {
            const apart = a.right <= b.x || b.right <= a.x || a.bottom <= b.top + 0.2 || b.bottom <= a.top + 0.2
            if (!apart) throw new Error(`${a.key} lies over ${b.key}`)
          }
      }),
      { seed: 730_001, numRuns },
    )
  })

  it('keeps every label inside its band, and bands apart', () => {
    fc.assert(
      fc.property(graphs, ({ blocks, links, bands }) => {
        const layout = layOut(blocks, links, bands)
        for (const { key, band, top, bottom } of boxes(blocks, layout)) {
          expect(top, key).toBeGreaterThanOrEqual((layout.bands[band]?.top ?? Number.NaN) + room.top - 0.2)
          expect(bottom, key).toBeLessThanOrEqual((layout.bands[band]?.bottom ?? Number.NaN) - room.bottom + 0.2)
        }
        layout.bands.slice(1).forEach(({ top }, index) => {
          expect(top).toBe(layout.bands[index]?.bottom)
        })
      }),
      { seed: 730_004 },
    )
  })

  it.each([
    ['any graph', graphs, 100],
    ['a whole family', families, 15],
  ])('runs every edge of %s rightwards, and under no label but the one that it leaves', (_, drawn, numRuns) => {
    fc.assert(
      fc.property(drawn, ({ blocks, links, bands }) => {
        const layout = layOut(blocks, links, bands)
        const all = boxes(blocks, layout)
        for (const { from, to, path } of layout.links) {
          const points = walkPath(path)
          const back = points.slice(1).some(({ x }, index) => x < (points[index]?.x ?? 0) - 0.01)
          const under = all.filter(
            (box) =>
              box.key !== from &&
              points.some(({ x, y }) => x > box.x && x < box.right && y > box.top && y < box.bottom),
          )
          expect({ edge: `${from} → ${to}`, back, under: under.map(({ key }) => key) }).toMatchObject({
            back: false,
            under: [],
          })
        }
      }),
      { seed: 730_001, numRuns },
    )
  })

  it('joins each edge to its blocks', () => {
    fc.assert(
      fc.property(graphs, ({ blocks, links, bands }) => {
        const layout = layOut(blocks, links, bands)
        const spots = new Map(layout.spots.map((spot) => [spot.key, spot]))
        for (const { from, to, path } of layout.links) {
          const points = walkPath(path)
          expect(points[0]?.y).toBe(spots.get(from)?.y)
          expect(points[0]?.x).toBeGreaterThanOrEqual((spots.get(from)?.x ?? Number.NaN) + 60)
          expect(points.at(-1)?.y).toBe(spots.get(to)?.y)
          expect(points.at(-1)?.x).toBeCloseTo((spots.get(to)?.x ?? 0) - 5, 1)
        }
      }),
      { seed: 730_005 },
    )
  })

  it('is the same drawing each time', () => {
    fc.assert(
      fc.property(graphs, ({ blocks, links, bands }) => {
        expect(layOut(blocks, links, bands)).toEqual(layOut(structuredClone(blocks), structuredClone(links), bands))
      }),
      { seed: 730_002, numRuns: 20 },
    )
  })

  it('never has more crossings than the order in which it was written', () => {
    fc.assert(
      fc.property(graphs, ({ blocks, links }) => {
        const columns = cutIntoColumns(blocks, links)
        const written = Array.from({ length: columns.count }, (_, column) =>
          [...columns.stops.keys()]
            .filter((stop) => columns.stops[stop]?.column === column)
            .sort((a, b) => (columns.stops[a]?.band ?? 0) - (columns.stops[b]?.band ?? 0) || a - b),
        )
        expect(countCrossings(columns, orderColumns(columns))).toBeLessThanOrEqual(countCrossings(columns, written))
      }),
      { seed: 730_006 },
    )
  })
})

describe('what is drawn by hand', () => {
  const links: Link[] = [
    { from: 'a', to: 'b' },
    { from: 'b', to: 'c' },
    { from: 'x', to: 'c' },
  ]
  const blocks = ['a', 'b', 'c', 'x'].map((key) => block(key, 0))

  it('stands what rests on nothing just before what rests on it', () => {
    const { spots } = layOut(blocks, links, [room])
    expect(spots.map(({ key, column }) => [key, column])).toEqual([
      ['a', 0],
      ['b', 1],
      ['c', 2],
      ['x', 1],
    ])
  })
  it('undoes a crossing', () => {
    const crossed: Link[] = [
      { from: 'a', to: 'x' },
      { from: 'b', to: 'c' },
    ]
    const columns = cutIntoColumns(blocks, crossed)
    expect(
      countCrossings(columns, [
        [0, 1],
        [2, 3],
      ]),
    ).toBe(1)
    expect(countCrossings(columns, orderColumns(columns))).toBe(0)
  })
  it('refuses a circle and a link to nowhere', () => {
    expect(() => layOut(blocks, [...links, { from: 'c', to: 'a' }], [room])).toThrow('comes before itself')
    expect(() => layOut(blocks, [{ from: 'a', to: 'z' }], [room])).toThrow('leads nowhere')
  })
  it('draws an empty band as room only', () => {
    expect(layOut([], [], [room, room])).toMatchObject({ width: 0, height: 64, spots: [], links: [] })
  })
})

describe('isotonic regression', () => {
  it('pools what is out of order at its weighted mean', () => {
    expect(isotonic([1, 5, 2], [1, 1, 2])).toEqual([1, 3, 3])
  })
  it('is non-decreasing and leaves alone what is in order', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -99, max: 99 })), (values) => {
        const free = isotonic(values, [])
        free.slice(1).forEach((value, index) => {
          expect(value).toBeGreaterThanOrEqual(free[index] ?? 0)
        })
        const sorted = [...values].sort((a, b) => a - b)
        expect(isotonic(sorted, [])).toEqual(sorted)
      }),
      { seed: 730_007 },
    )
  })
})
