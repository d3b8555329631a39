import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PhaseSet, phaseSets } from '../../curriculum/model'
import { apart, markTable } from './apart'
import { type Mark, type MarkKey, type MarkRow, markKeysOf, standingMarks } from './mark'
import { oddities } from './odd'
import { sayApart, sayOddity } from './wording'

const mark = (key: MarkKey, atMs: number, changes: Partial<Mark> = {}): Mark => ({
  coach: 'ines',
  key,
  atMs,
  frameUs: 16_667,
  ...changes,
})
const range = { startMs: 300, endMs: 2600 }
const running = markKeysOf('running')

describe('what there is to mark', () => {
  it('is the phases of the skill in their order, with the board left and the highest point once', () => {
    for (const set of Object.keys(phaseSets) as PhaseSet[]) {
      const keys = markKeysOf(set)
      const phases: readonly MarkKey[] = phaseSets[set]
      expect(keys.filter((key) => phases.includes(key))).toEqual([...phases])
      expect(new Set(keys).size).toBe(keys.length)
      expect(keys.includes('highest point')).toBe(phases.includes('take-off'))
    }
    expect(markKeysOf('standing twister').slice(1, 6)).toEqual([
      'press',
      'take-off',
      'flight',
      'highest point',
      'twist start',
    ])
  })
})

describe('the marks that stand', () => {
  const row = (coach: string, atMs: number | null): MarkRow => ({ coach, key: 'entry', atMs, frameUs: null })

  it('are the last of each coach and phase, and none once taken back', () => {
    expect(standingMarks([row('ines', 1), row('birk', 2), row('ines', 3)]).map(({ atMs }) => atMs)).toEqual([3, 2])
    expect(standingMarks([row('ines', 1), row('ines', null)])).toEqual([])
    expect(standingMarks([row('ines', 1), row('ines', null), row('ines', 4)])).toHaveLength(1)
  })
})

describe('what is odd', () => {
  it('is nothing about marks in order inside the range', () => {
    const times = fc.uniqueArray(fc.integer({ min: 300, max: 2599 }), { minLength: 9, maxLength: 9 })
    fc.assert(
      fc.property(times, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a - b)
        const marks = running.map((key, index) => mark(key, sorted[index] ?? 0))
        expect(oddities(marks, running, range)).toEqual([])
        const [, second, third] = marks
        if (!second || !third) throw new Error('nine keys are marked')
        const swapped = marks.map((one) =>
          one === second ? { ...one, atMs: third.atMs } : one === third ? { ...one, atMs: second.atMs } : one,
        )
        expect(oddities(swapped, running, range).map(({ kind }) => kind)).toEqual(['order'])
      }),
      { seed: 9 },
    )
  })

  it('is a highest point outside the flight, a mark outside the range, a frame of unknown length', () => {
    const marks = [mark('flight', 1000), mark('highest point', 990), mark('entry', 2600)]
    expect(oddities(marks, running, range).map(sayOddity)).toEqual([
      '“flight” (1.000 s) does not come before “highest point” (0.990 s). Look at both frames again.',
      '“entry” (2.600 s) lies after the range of this moment.',
    ])
    const [unknown] = oddities([mark('press', 100, { frameUs: null })], running, { startMs: 0, endMs: null })
    expect(unknown && sayOddity(unknown)).toMatch(/“press” counts no frames/)
    expect(oddities([mark('press', 100)], running, range)).toMatchObject([{ kind: 'outside', side: 'before' }])
  })
})

describe('two coaches', () => {
  it('differ by milliseconds and whole frames, the second from the first', () => {
    expect(apart(mark('entry', 1017), mark('entry', 1050))).toEqual({ ms: 33, frames: 2 })
    expect(apart(mark('entry', 1050), mark('entry', 1017))).toEqual({ ms: -33, frames: -2 })
    expect(apart(mark('entry', 5), mark('entry', 5))).toEqual({ ms: 0, frames: 0 })
    expect(apart(mark('entry', 0, { frameUs: null }), mark('entry', 40, { frameUs: null })).frames).toBeNull()
    expect(apart(mark('entry', 0, { frameUs: null }), mark('entry', 40, { frameUs: 20_000 })).frames).toBe(2)
    expect(sayApart({ ms: 17, frames: 1 })).toBe('17 ms later, 1 frame')
    expect(sayApart({ ms: -33, frames: -2 })).toBe('33 ms earlier, 2 frames')
    expect(sayApart({ ms: 40, frames: null })).toBe('40 ms later')
    expect(sayApart({ ms: 0, frames: 0 })).toBe('the same frame')
  })

  it('stand beside each other, phase by phase, in the order of the dive', () => {
    const birk = { coach: 'birk' }
    const marks = [mark('entry', 1900, birk), mark('flight', 1017), mark('flight', 1033, birk)]
    expect(markTable(marks, running, ['ines', 'birk'])).toMatchObject([
      { key: 'flight', marks: [{ apart: null }, { apart: { ms: 16, frames: 1 } }] },
      { key: 'entry', marks: [null, { apart: null }] },
    ])
  })
})
