import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatTemporalFragment, momentUrl, parseTemporalFragment, splitMomentLink } from '../../lib/assessment/moment'
import suite from '../fixtures/standards/media-fragments/ua-temporal.json'

const seed = 20_120_925

interface Case {
  readonly id: string
  readonly fragment: string
  readonly valid: boolean
  readonly start?: number
  readonly end?: number | null
}
const cases: readonly Case[] = suite.cases

// W3C Media Fragments UA test cases (temporal) and the examples of Media Fragments URI 1.0 (REC-media-frags-20120925).
describe('the temporal test cases', () => {
  it.each(cases)('$id #$fragment', ({ fragment, valid, start, end }) => {
    expect(parseTemporalFragment(fragment)).toEqual(valid ? { start, end } : null)
  })

  it('are 73, 37 of them valid', () => {
    expect([cases.length, cases.filter(({ valid }) => valid).length]).toEqual([73, 37])
  })
})

const milliseconds = fc.integer({ min: 0, max: 1_000 * 3600 * 24 })
const ranges = fc.tuple(milliseconds, fc.option(fc.integer({ min: 1, max: 10_000_000 }))).map(([start, length]) => ({
  start: start / 1000,
  end: length === null ? null : (start + length) / 1000,
}))

describe('writing a range', () => {
  it('and reading it gives the same range, to the millisecond', () => {
    fc.assert(
      fc.property(ranges, (range) => {
        expect(parseTemporalFragment(formatTemporalFragment(range))).toEqual(range)
      }),
      { seed, numRuns: 2000 },
    )
  })

  it('in hours, minutes and seconds says the same as in seconds', () => {
    const clocks = fc.tuple(fc.nat(30), fc.nat(59), fc.nat(59))
    const two = (value: number) => String(value).padStart(2, '0')
    fc.assert(
      fc.property(clocks, ([hours, minutes, seconds]) => {
        const start = hours * 3600 + minutes * 60 + seconds
        expect(parseTemporalFragment(`t=${hours}:${two(minutes)}:${two(seconds)}`)).toEqual({ start, end: null })
      }),
      { seed },
    )
  })

  it('and putting it on a link can be undone, whatever else the fragment holds', () => {
    const others = fc.constantFrom('', '#lane=2', '#lane=2&view', '#xywh=0,0,10,10')
    fc.assert(
      fc.property(others, ranges, ranges, (other, first, second) => {
        const link = `https://video.example/session.mp4?day=3&t=9${other}`
        expect(splitMomentLink(momentUrl(link, first))).toEqual({ link, range: first })
        expect(momentUrl(momentUrl(link, first), second)).toBe(momentUrl(link, second))
      }),
      { seed },
    )
  })
})

it('never throws on a fragment, and what it reads is a range', () => {
  const parts = fc.array(fc.constantFrom('t', '=', '&', ',', ':', '.', 'npt:', '%', '%2C', '0', '59', '60', '7', '#'))
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        parts.map((part) => part.join('')),
        parts.map((part) => `t=${part.join('')}`),
      ),
      (fragment) => {
        const range = parseTemporalFragment(fragment)
        if (!range) return
        expect(range.start).toBeGreaterThanOrEqual(0)
        if (range.end !== null) expect(range.end).toBeGreaterThan(range.start)
      },
    ),
    { seed, numRuns: 5000 },
  )
})
