import { describe, expect, it } from 'vitest'
import type { Row, Rows } from '@/seed/demo/prepared/file'
import { differencesOf } from './same-rows'

const id = (nth: number, telling: string): string =>
  `01920000-0000-7000-8000-${telling.repeat(8)}${String(nth).padStart(4, '0')}`
const fixedId = (nth: number): string => id(nth, '0')
const digest = (nth: number, telling: string): string => `${telling}${String(nth).padStart(3, '0')}`.repeat(16)

const free = { Words: ['id', 'salt'], Note: ['wordsId', 'digest'], Ledger: ['payload'] }

interface Change {
  readonly rating?: number
  readonly swapped?: boolean
  readonly cited?: number
  readonly text?: string
}

/** A tiny telling: two dives with the same words about each, and a ledger entry that cites a digest. */
function tell(telling: string, { rating = 3, swapped = false, cited = 1, text = 'Rushed.' }: Change = {}): Rows {
  const words = (nth: number, said: string): Row => ({
    id: id(nth, telling),
    salt: telling.repeat(32),
    text: said,
    diver: fixedId(7),
  })
  const note = (nth: number, of: number, ratings: Row): Row => ({
    ...{ id: fixedId(nth), wordsId: id(of, telling), digest: digest(nth, telling), ratings },
  })
  return new Map([
    ['Words', [words(1, 'Rushed.'), words(2, text)]],
    ['Note', [note(1, swapped ? 2 : 1, { tuck: rating }), note(2, swapped ? 1 : 2, { tuck: 4 })]],
    ['Ledger', [{ seq: 1, payload: `{"cites":"${digest(cited, telling)}"}` }]],
  ])
}

describe('two tellings', () => {
  it('are the same when they differ in nothing but what chance made', () => {
    expect(differencesOf(tell('a'), tell('b'), free)).toEqual([])
    expect(differencesOf(tell('a'), tell('a'), free)).toEqual([])
  })

  it('are the same when rows that nothing tells apart change places', () => {
    expect(differencesOf(tell('a'), tell('b', { swapped: true }), free)).toEqual([])
  })

  it('differ by one rating', () => {
    const found = differencesOf(tell('a'), tell('b', { rating: 2 }), free)
    expect(found.filter((line) => line.startsWith('Note'))).toHaveLength(2)
    expect(found.join()).toContain('"tuck":2')
  })

  it('differ when a row refers to the wrong row, or cites the wrong digest', () => {
    const change = { text: 'Better.' }
    expect(differencesOf(tell('a', change), tell('b', change), free)).toEqual([])
    expect(differencesOf(tell('a', change), tell('b', { ...change, swapped: true }), free)).not.toEqual([])
    expect(differencesOf(tell('a'), tell('b', { cited: 2 }), free)).not.toEqual([])
  })

  it('differ by a missing row, an unknown table, a missing column', () => {
    const rows = tell('b')
    const short = new Map([...rows, ['Words', (rows.get('Words') ?? []).slice(1)]])
    expect(differencesOf(tell('a'), short, free).join()).toContain('only in the first')
    expect(differencesOf(tell('a'), new Map([...rows, ['Mark', [{ id: 1 }]]]), free)).toEqual([
      'Mark, only in the second: {"id":1}',
    ])
    const [entry] = rows.get('Ledger') ?? []
    expect(differencesOf(rows, new Map([...rows, ['Ledger', [{ ...entry, at: null }]]]), free)).toHaveLength(2)
  })

  it('differ by an id in a column in which chance makes none', () => {
    expect(differencesOf(tell('a'), tell('b'), { ...free, Words: ['id'] })).not.toEqual([])
  })
})
