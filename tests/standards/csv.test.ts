import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { writeCsv } from '@/lib/reports/csv'

// RFC 4180, section 2: rules 1 (CRLF), 5 and 6 (quotation marks), 7 (doubled). Formulas: OWASP, CSV Injection.

/** A reader by the grammar of RFC 4180, written apart from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]]
  let at = 0
  while (at < text.length) {
    const field = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/.exec(text.slice(at))
    if (!field) throw new Error(`not a field at ${at}: ${JSON.stringify(text.slice(at))}`)
    rows.at(-1)?.push(field[1]?.replaceAll('""', '"') ?? field[2] ?? '')
    at += field[0].length
    if (field[3] === '\r\n') rows.push([])
  }
  return rows.slice(0, -1)
}

describe('comma-separated values', () => {
  it('are those of the examples of RFC 4180', () => {
    expect(
      writeCsv([
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ]),
    ).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')
    expect(writeCsv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n')
    expect(writeCsv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n')
  })

  it('are read back by its grammar, whatever the text, and no cell begins as a formula', () => {
    const text = fc.oneof(
      fc.string({ unit: fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '"', ',', "'", 'a', '1', 'é', '＝') }),
      fc.string(),
    )
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }), (rows) => {
        const read = readCsv(writeCsv(rows))
        expect(read.map((row) => row.length)).toEqual(rows.map((row) => row.length))
        read.flat().forEach((cell, index) => {
          expect(cell).not.toMatch(/^[=+\-@\t\r\n]/)
          expect([rows.flat()[index], `'${rows.flat()[index]}`]).toContain(cell)
        })
      }),
      { seed: 20261127, numRuns: 500 },
    )
  })

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\nx', '＝1', '=HYPERLINK("https://e.example")'])(
    'make text of %j',
    (cell) => {
      expect(readCsv(writeCsv([[cell]]))).toEqual([[`'${cell}`]])
    },
  )

  it('write numbers as numbers', () => {
    expect(writeCsv([[-1, 0, 12.5]])).toBe('-1,0,12.5\r\n')
  })
})
