import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { duoTime, type Side, sides, type Timing } from './duo-time'
import { timeMap } from './time-map'

/** The second film is two seconds ahead of the first. */
const map = timeMap([{ first: 1, second: 3 }])
const spans = { first: { start: 0.5, end: 2.5 }, second: { start: 2, end: null } }
const both = { first: 10, second: 6 }

describe('two films on one time', () => {
  it('have all that either shows, and lead in their order', () => {
    const time = duoTime({ map, spans }, both)
    expect(time.whole).toEqual({ start: 0, end: 4 })
    expect([0.2, 1, 3].map((at) => time.leader(at))).toEqual(['second', 'first', 'second'])
    expect([0.2, 1, 3].map((at) => time.shown('first', at))).toEqual([false, true, false])
    expect(time.timeIn('second', 1.5)).toBe(3.5)
    expect(time.timeFrom('second', 3.5)).toBe(1.5)
    expect(time.place('first', 3)).toBeCloseTo(2.499, 9)
  })

  it('go by the one that is there, on the time of the first', () => {
    const second = duoTime({ map, spans }, { first: null, second: 6 })
    expect(second.whole).toEqual({ start: 0, end: 4 })
    expect(second.leader(1)).toBe('second')
    expect(second.shown('first', 1)).toBe(false)
    const first = duoTime({ map, spans }, { first: 10, second: null })
    expect(first.whole).toEqual({ start: 0.5, end: 2.5 })
    expect(first.leader(3)).toBe('first')
    expect(duoTime({ map, spans }, { first: null, second: null }).leader(1)).toBeNull()
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('go on where a film says %d of its length', (length) => {
    const time = duoTime({ map, spans }, { first: 10, second: length })
    expect(time.span.second).toEqual({ start: 2, end: 602 })
    expect(time.shown('second', 300)).toBe(true)
  })

  it('show no more than the film has, whatever its moment says', () => {
    const short = duoTime({ map, spans: { ...spans, first: { start: 0.5, end: 9 } } }, { ...both, first: 2 })
    expect(short.span.first).toEqual({ start: 0.5, end: 2 })
    const beyond = duoTime({ map, spans: { ...spans, first: { start: 5, end: 9 } } }, { ...both, first: 2 })
    expect(beyond.span.first).toEqual({ start: 2, end: 2 })
    expect(beyond.shown('first', 2)).toBe(false)
  })

  it('play on with the next where they do not meet, and after the last from the start', () => {
    const apart: Timing = {
      map: timeMap([{ first: 0, second: 0 }]),
      spans: { first: { start: 0, end: 1 }, second: { start: 5, end: 6 } },
    }
    const time = duoTime(apart, { first: 9, second: 9 })
    expect(time.whole).toEqual({ start: 0, end: 6 })
    expect(sides.some((side) => time.shown(side, 3))).toBe(false)
    expect(time.leader(3)).toBe('first')
    expect([time.onwards(1), time.onwards(6)]).toEqual([5, 0])
  })

  it('always show something at the start, wherever that comes from', () => {
    const seconds = fc.integer({ min: 0, max: 9_000 }).map((ms) => ms / 1000)
    const span = fc
      .tuple(seconds, fc.integer({ min: 10, max: 5_000 }))
      .map(([start, ms]) => ({ start, end: start + ms / 1000 }))
    const mark = fc.tuple(seconds, seconds)
    fc.assert(
      fc.property(span, span, mark, mark, (first, second, [a, b], [c, d]) => {
        const through = timeMap([
          { first: a, second: b },
          { first: a + c + 0.01, second: b + d + 0.01 },
        ])
        const time = duoTime({ map: through, spans: { first, second } }, { first: 60, second: 60 })
        const shown = (at: number) => sides.filter((side: Side) => time.shown(side, at))
        expect(shown(time.whole.start)).not.toEqual([])
        const onwards = time.onwards(Math.min(first.end, time.timeFrom('second', second.end)))
        expect(shown(onwards)).not.toEqual([])
      }),
      { seed: 26, numRuns: 500 },
    )
  })
})
