import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Withheld } from './withheld-arcs'
import { leastShared, withholdList, withholdTable } from './withhold'

type Cells = readonly (readonly number[])[]
const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0)
const columnTotals = (cells: Cells) => (cells[0] ?? []).map((_, column) => sum(cells.map((row) => row[column] ?? 0)))

/** Every table of counts up to `top` that looks the same as this one to whoever sees only what is shared; by brute force. */
function lookalikes(cells: Cells, withheld: Withheld, top: number): Cells[] {
  const flat = cells.flatMap((row, r) => row.map((count, c) => ({ count, hidden: withheld.cells[r]?.[c] ?? false })))
  const width = cells[0]?.length ?? 0
  const found: Cells[] = []
  const same = (other: Cells) =>
    other.every((row, r) => withheld.rows[r] || sum(row) === sum(cells[r] ?? [])) &&
    columnTotals(other).every((total, c) => withheld.columns[c] || total === columnTotals(cells)[c]) &&
    (withheld.total || sum(other.map(sum)) === sum(cells.map(sum)))
  const fill = (counts: readonly number[]) => {
    const [row, column] = [Math.floor((counts.length - 1) / width), (counts.length - 1) % width]
    const soFar = counts.slice(row * width)
    const down = counts.filter((_, index) => index % width === column)
    // What is over a total that is shared, or a finished row that falls short of it, is no way on.
    if (counts.length > 0 && !withheld.rows[row]) {
      const left = sum(cells[row] ?? []) - sum(soFar)
      if (left < 0 || (soFar.length === width && left > 0)) return
    }
    if (counts.length > 0 && !withheld.columns[column] && sum(down) > (columnTotals(cells)[column] ?? 0)) return
    const next = flat[counts.length]
    if (!next) {
      const table = cells.map((_, r) => counts.slice(r * width, (r + 1) * width))
      if (same(table)) found.push(table)
      return
    }
    if (!next.hidden) return fill([...counts, next.count])
    for (let count = 0; count <= top; count++) fill([...counts, count])
  }
  fill([])
  return found
}

const count = fc.oneof({ weight: 3, arbitrary: fc.nat(4) }, { weight: 2, arbitrary: fc.integer({ min: 5, max: 8 }) })
const table = (height: number, width: number): fc.Arbitrary<Cells> =>
  fc.array(fc.array(count, { minLength: width, maxLength: width }), { minLength: height, maxLength: height })

const isSmall = (value: number | undefined): boolean => (value ?? 0) < leastShared

describe('what is withheld of a table', () => {
  const runs = { seed: 20261127, numRuns: 150 }

  it('is every figure about fewer than five, and only what it takes besides', () => {
    const cells = [
      [12, 3, 9],
      [10, 11, 8],
      [7, 14, 20],
    ]
    const withheld = withholdTable(cells)
    expect(withheld.rows.concat(withheld.columns, withheld.total)).not.toContain(true)
    // The 3, one beside it in its row and one below, and the corner that closes the ring.
    expect(withheld.cells).toEqual([
      [false, true, true],
      [false, true, true],
      [false, false, false],
    ])
    fc.assert(
      fc.property(table(3, 3), (cells) => {
        const withheld = withholdTable(cells)
        cells.forEach((row, r) => {
          row.forEach((one, c) => {
            if (isSmall(one)) expect(withheld.cells[r]?.[c]).toBe(true)
          })
          if (isSmall(sum(row))) expect(withheld.rows[r]).toBe(true)
        })
        columnTotals(cells).forEach((total, c) => {
          if (isSmall(total)) expect(withheld.columns[c]).toBe(true)
        })
      }),
      runs,
    )
    const plenty = cells.map((row) => row.map((one) => one + 5))
    expect(withholdTable(plenty).cells.flat()).not.toContain(true)
  })

  it.each([
    [2, 2],
    [2, 3],
    [3, 2],
  ])('cannot be worked out from what is shared, by trying every table of %i × %i', (height, width) => {
    fc.assert(
      fc.property(table(height, width), (cells) => {
        const withheld = withholdTable(cells)
        // Where the whole is small nothing at all is shared.
        if (withheld.total) expect(withheld.cells.flat()).not.toContain(false)
        if (withheld.total) return
        const tables = lookalikes(cells, withheld, 13)
        const most = (of: (table: Cells) => number | undefined) => Math.max(...tables.map((one) => of(one) ?? 0))
        cells.forEach((row, r) => {
          row.forEach((one, c) => {
            if (isSmall(one)) expect(most((table) => table[r]?.[c])).toBeGreaterThanOrEqual(leastShared)
          })
          if (isSmall(sum(row))) expect(most((table) => sum(table[r] ?? []))).toBeGreaterThanOrEqual(leastShared)
        })
        columnTotals(cells).forEach((total, c) => {
          if (isSmall(total)) expect(most((table) => columnTotals(table)[c])).toBeGreaterThanOrEqual(leastShared)
        })
      }),
      { ...runs, numRuns: 30 },
    )
  })

  it('cannot be worked out from two tables that count the same divers by other rows', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ one: fc.nat(1), other: fc.nat(1), column: fc.nat(1) }), { minLength: 5, maxLength: 22 }),
        (divers) => {
          const by = (rowOf: (diver: (typeof divers)[number]) => number): Cells =>
            [0, 1].map((row) =>
              [0, 1].map((column) => divers.filter((diver) => rowOf(diver) === row && diver.column === column).length),
            )
          const tables = [by(({ one }) => one), by(({ other }) => other)]
          const [first = [], second = []] = tables.map((cells) => lookalikes(cells, withholdTable(cells), 22))
          const totals = (cells: Cells) => columnTotals(cells).join()
          const shared = new Set(first.map(totals).filter((one) => second.some((cells) => totals(cells) === one)))
          tables.forEach((cells, index) => {
            const alike = (index === 0 ? first : second).filter((one) => shared.has(totals(one)))
            cells.forEach((row, r) => {
              row.forEach((one, c) => {
                const most = Math.max(...alike.map((table) => table[r]?.[c] ?? 0))
                if (isSmall(one)) expect(most).toBeGreaterThanOrEqual(leastShared)
              })
            })
          })
        },
      ),
      { ...runs, numRuns: 30 },
    )
  })
})

describe('what is withheld of a list', () => {
  it('is nothing or more than one count, which come to at least five', () => {
    expect(withholdList([7, 9, 6])).toEqual([false, false, false])
    expect(withholdList([7, 9, 2])).toEqual([true, false, true])
    expect(withholdList([3, 4, 20])).toEqual([true, true, false])
    expect(withholdList([0, 0, 20])).toEqual([true, true, true])
    expect(withholdList([1, 2])).toEqual([true, true])
    fc.assert(
      fc.property(fc.array(count, { minLength: 1, maxLength: 6 }), (counts) => {
        const withheld = withholdList(counts)
        const hidden = counts.filter((_, index) => withheld[index])
        if (sum(counts) < leastShared) expect(hidden).toHaveLength(counts.length)
        else if (hidden.length > 0) {
          expect(hidden.length).toBeGreaterThan(1)
          expect(sum(hidden)).toBeGreaterThanOrEqual(leastShared)
        }
        for (const [index, one] of counts.entries()) if (isSmall(one)) expect(withheld[index]).toBe(true)
      }),
      { seed: 20261127, numRuns: 300 },
    )
  })
})
