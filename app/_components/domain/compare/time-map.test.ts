import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Anchor, inOrder, shifted, shows, timeMap, wholeSpan, within } from './time-map'

const runs = { seed: 26, numRuns: 500 }
const steps = fc.array(fc.tuple(fc.integer({ min: 2, max: 2000 }), fc.integer({ min: 2, max: 2000 })), {
  minLength: 1,
  maxLength: 9,
})
/** Marks of two films, to the millisecond, each later than the one before. */
const anchors = steps.map((all) => {
  let [first, second] = [0, 0]
  return all.map(([a, b]): Anchor => {
    first += a
    second += b
    return { first: first / 1000, second: second / 1000 }
  })
})
const time = fc.double({ min: -5, max: 25, noNaN: true })

describe('the map between two films', () => {
  it('meets every mark in both', () => {
    fc.assert(
      fc.property(anchors, (marks) => {
        const map = timeMap(marks)
        for (const { first, second } of marks) {
          expect(map.toSecond(first)).toBeCloseTo(second, 9)
          expect(map.toFirst(second)).toBeCloseTo(first, 9)
        }
      }),
      runs,
    )
  })

  it('goes back where it came from, and never backwards', () => {
    fc.assert(
      fc.property(anchors, time, time, fc.double({ min: -1, max: 1, noNaN: true }), (marks, one, other, by) => {
        const map = shifted(timeMap(marks), by)
        expect(map.toFirst(map.toSecond(one))).toBeCloseTo(one, 6)
        expect(map.toSecond(map.toFirst(other))).toBeCloseTo(other, 6)
        const [early, late] = one < other ? [one, other] : [other, one]
        if (late - early > 1e-6) expect(map.toSecond(late)).toBeGreaterThan(map.toSecond(early))
      }),
      runs,
    )
  })

  it('says how fast the second film runs', () => {
    fc.assert(
      fc.property(anchors, time, (marks, at) => {
        const map = timeMap(marks)
        const step = 1e-7
        // Within a straight piece.
        fc.pre(marks.every(({ first }) => Math.abs(first - at) > 2 * step))
        expect(map.slopeAt(at)).toBeGreaterThan(0)
        expect((map.toSecond(at + step) - map.toSecond(at - step)) / (2 * step)).toBeCloseTo(map.slopeAt(at), 4)
      }),
      runs,
    )
  })

  it('keeps the clock outside the marks, and everywhere with one', () => {
    fc.assert(
      fc.property(anchors, time, (marks, at) => {
        const map = timeMap(marks.slice(0, 1))
        expect(map.toSecond(at + 1) - map.toSecond(at)).toBeCloseTo(1, 6)
        expect(timeMap(marks).slopeAt(at < 0 ? at : at + 100)).toBe(1)
      }),
      runs,
    )
  })

  it('leaves out marks that run against the clock, and needs one', () => {
    const good = [
      { first: 1, second: 2 },
      { first: 3, second: 5 },
    ]
    expect(inOrder([{ first: 2, second: 1 }, ...good].reverse())).toEqual(good)
    expect(inOrder([...good, { first: 3, second: 5 }])).toEqual(good)
    expect(() => timeMap([])).toThrow('in common')
  })
})

describe('what a film shows', () => {
  const span = fc.tuple(fc.double({ min: 0, max: 9, noNaN: true }), fc.double({ min: 0.01, max: 9, noNaN: true }))

  it('is held at its first and last frame outside its range', () => {
    fc.assert(
      fc.property(span, time, ([start, length], at) => {
        const film = { start, end: start + length }
        const held = within(film, at)
        expect(held).toBeGreaterThanOrEqual(start)
        expect(held).toBeLessThan(film.end)
        expect(shows(film, at) ? held : within(film, held)).toBe(shows(film, at) ? at : held)
      }),
      runs,
    )
  })

  it('lies within the whole of both', () => {
    fc.assert(
      fc.property(anchors, span, span, (marks, [a, first], [b, second]) => {
        const map = timeMap(marks)
        const films = [
          { start: a, end: a + first },
          { start: b, end: b + second },
        ] as const
        const whole = wholeSpan(map, ...films)
        expect(whole.start).toBeLessThanOrEqual(a)
        expect(map.toSecond(whole.start)).toBeLessThanOrEqual(b + 1e-6)
        expect(map.toSecond(whole.end)).toBeGreaterThanOrEqual(b + second - 1e-6)
      }),
      runs,
    )
  })
})
