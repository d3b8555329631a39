import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type OutgoingRow, outgoingTable, withheldMark } from './outgoing-table'

const row = (label: string, counts: readonly number[], own: readonly number[] = counts.map(() => 0)): OutgoingRow => ({
  label,
  counts,
  own,
  ownClub: label === 'Ours',
})

describe('a table that is shared', () => {
  it('stands whole when every figure is about five or more', () => {
    expect(outgoingTable([row('Here', [5, 9]), row('There', [7, 6])], 'all')).toEqual([
      ['Here', 5, 9, 14],
      ['There', 7, 6, 13],
      ['all', 12, 15, 27],
    ])
  })

  it('withholds a small figure, and what would give it away by its totals', () => {
    const lines = outgoingTable([row('Here', [2, 9]), row('There', [7, 6])], 'all')
    expect(lines).toEqual([
      ['Here', withheldMark, withheldMark, 11],
      ['There', withheldMark, withheldMark, 13],
      ['all', 9, 15, 24],
    ])
  })

  it("shows one's own club as it is, and withholds what is left of a total when that is taken off", () => {
    const lines = outgoingTable([row('Ours', [1, 2], [1, 2]), row('Here', [5, 9]), row('There', [7, 6])], 'all')
    expect(lines[0]).toEqual(['Ours', 1, 2, 3])
    expect(lines.at(-1)).toEqual(['all', 13, 17, 30])
    // A level that only our divers hold tells that nobody else's do.
    const alone = outgoingTable([row('Soundings', [8, 9], [8, 9]), row('Bearings', [9, 9])], 'all')
    expect(alone[0]?.slice(1)).toEqual([withheldMark, withheldMark, withheldMark])
    const mixed = outgoingTable([row('Soundings', [8, 9], [6, 0]), row('Bearings', [9, 9])], 'all')
    expect(mixed[0]?.[1]).toBe(withheldMark)
    expect(outgoingTable([row('Ours', [3, 4], [3, 4]), row('Here', [1, 2])], 'all')).toEqual([
      ['Ours', 3, 4, 7],
      ['Here', withheldMark, withheldMark, withheldMark],
      ['all', withheldMark, withheldMark, withheldMark],
    ])
  })

  it('never shows a figure in which fewer than five are of other clubs', () => {
    const counts = fc.array(fc.tuple(fc.nat(9), fc.nat(4)), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(fc.array(counts, { minLength: 1, maxLength: 4 }), (drawn) => {
        const rows = drawn.map((cells, index) =>
          row(
            String(index),
            cells.map(([others, own]) => others + own),
            cells.map(([, own]) => own),
          ),
        )
        const lines = outgoingTable(rows, 'all')
        drawn.forEach((cells, r) => {
          const total = cells.reduce((sum, [others]) => sum + others, 0)
          cells.forEach(([others], c) => {
            if (others < 5) expect(lines[r]?.[c + 1]).toBe(withheldMark)
          })
          if (total < 5) expect(lines[r]?.at(-1)).toBe(withheldMark)
        })
      }),
      { seed: 20261127, numRuns: 200 },
    )
  })
})
