import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { momentSchema } from '../deck/contract'
import { readClockError, sayClock } from './camera-clock'
import { clipRange, intoClip } from './clip-range'
import { sayAgo } from './say-ago'

const timed = (length: number | null) => ({ start: 0, end: length === null ? null : length * 1000, range: null })

describe('the moment of a dive in its clip', () => {
  it('is what the link names, the whole of a short clip, or the part around the mark', () => {
    expect(clipRange({ ...timed(20), range: { start: 3, end: 6 } }, 12, false)).toEqual({ start: 3, end: 6 })
    expect(clipRange({ start: null, end: null, range: null }, null, false)).toEqual({ start: 0, end: null })
    expect(clipRange(timed(20), 12, false)).toEqual({ start: 0, end: null })
    expect(clipRange(timed(null), 12, false)).toEqual({ start: 0, end: null })
    expect(clipRange(timed(600), 300.4, false)).toEqual({ start: 270, end: 310 })
    expect(clipRange(timed(null), 300, false)).toEqual({ start: 270, end: 310 })
    expect(clipRange(timed(20), 12, true)).toEqual({ start: 0, end: 20 })
    expect(clipRange(timed(600), -8, false)).toEqual({ start: 0, end: 10 })
  })

  it('is always a range that a moment may have', () => {
    const seconds = fc.integer({ min: 1, max: 7200 })
    fc.assert(
      fc.property(
        fc.option(seconds),
        fc.option(fc.double({ min: -20, max: 9000, noNaN: true })),
        fc.boolean(),
        (length, into, shared) => {
          const range = clipRange(timed(length), into, shared)
          const moment = { id: '019537d9-3c00-7000-8000-000000000000', link: 'https://clips.example/a', ...range }
          expect(momentSchema.safeParse(moment).error).toBeUndefined()
        },
      ),
      { seed: 20_260_302, numRuns: 500 },
    )
  })

  it('lies as far in as the clocks say, the camera’s put right', () => {
    expect(intoClip({ start: 60_000 }, 100_000, 30_000)).toBe(10)
    expect(intoClip({ start: null }, 100_000, 30_000)).toBeNull()
  })
})

it.each([
  ['3', 180_000],
  ['3:20', 200_000],
  ['0:45', 45_000],
  ['1:03:20', 3_800_000],
  [' 90 ', 5_400_000],
  ['', null],
  ['3:75', null],
  ['-3', null],
  ['three', null],
])('reads how far a clock is off: %s', (text, milliseconds) => {
  expect(readClockError(text)).toBe(milliseconds)
})

it('says a clock and a time ago as a coach would', () => {
  expect([200_000, -3_720_000, 0, 400].map(sayClock)).toEqual([
    '3 min 20 s behind',
    '1 h 2 min ahead',
    'right',
    'right',
  ])
  const ago = (minutes: number) => sayAgo(0, minutes * 60_000)
  expect([-5, 0, 1, 59, 60, 150, 1440, 4320].map(ago)).toEqual([
    ...['just now', 'just now', 'one minute ago', '59 minutes ago', 'one hour ago'],
    ...['two hours ago', 'one day ago', 'three days ago'],
  ])
})
