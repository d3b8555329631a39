import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { differenceOf, overlap, timeBetween } from './difference'
import { measuredAs, seenAt } from './measured'

const quantity = fc.record({
  value: fc.double({ min: -400, max: 400, noNaN: true }),
  sd: fc.double({ min: 0.001, max: 20, noNaN: true }),
})
const runs = { seed: 26, numRuns: 300 }

describe('a difference between two films', () => {
  it('is the same the other way round, but for its sign', () => {
    fc.assert(
      fc.property(quantity, quantity, (a, b) => {
        const [one, other] = [measuredAs(a.value, a.sd), measuredAs(b.value, b.sd)]
        const [there, back] = [differenceOf(one, other), differenceOf(other, one)]
        expect(there.by.value).toBeCloseTo(-back.by.value, 9)
        expect(there.by.sd).toBeCloseTo(Math.hypot(a.sd, b.sd), 6)
        expect(there.told).toBe(back.told)
        expect(there.told).toBe(!overlap(one, other))
      }),
      runs,
    )
  })

  it('that the intervals do not tell is never told, and one far beyond them is', () => {
    expect(differenceOf(measuredAs(10, 1), measuredAs(13, 1)).told).toBe(false)
    expect(differenceOf(measuredAs(10, 1), measuredAs(14, 1)).told).toBe(true)
    // Ends that touch have a value in common.
    expect(overlap({ value: 1, sd: 1, low: 0, high: 2 }, { value: 3, sd: 1, low: 2, high: 4 })).toBe(true)
  })

  it('goes the short way round a circle', () => {
    const found = differenceOf(measuredAs(179, 1), measuredAs(-179, 1), 360)
    expect(found.by.value).toBeCloseTo(2, 9)
    expect(found.told).toBe(false)
    expect(differenceOf(measuredAs(170, 1), measuredAs(-170, 1), 360)).toMatchObject({ told: true })
  })
})

describe('the time between two frames', () => {
  it('is known to within four fifths of a frame', () => {
    const { value, low, high } = timeBetween(seenAt(1, 1 / 60), seenAt(2.2, 1 / 60))
    expect(value).toBeCloseTo(1.2, 9)
    expect((high - low) * 60).toBeCloseTo(1.6, 2)
  })

  it('covers the true time in 93 of 100 films or more, wherever frames fall', () => {
    const frame = 1 / 60
    let held = 0
    for (let index = 0; index < 10_000; index++) {
      // Phases of the two events within their frames, spread evenly.
      const [a, b] = [(index % 100) / 100, Math.floor(index / 100) / 100]
      const measured = timeBetween(seenAt(1 + a * frame, frame), seenAt(2 + b * frame, frame))
      if (measured.low <= 1 && measured.high >= 1) held++
    }
    expect(held / 10_000).toBeGreaterThan(0.93)
  })
})
