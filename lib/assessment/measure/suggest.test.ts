import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { AskedMeasure, Bands, MeasureName } from '@/lib/curriculum/measure/model'
import { measureFacts, measureNames } from '@/lib/curriculum/measure/model'
import { anAskedMeasure } from '@/tests/support/asked-measures'
import { measuredAs } from './measured'
import { type Suggested, sizesOf, suggest } from './suggest'
import { sayAsked, sayRated, saySuggestion } from './wording-asked'

const bandsBelow = (most4: number, most3: number, most2: number, most1: number): Bands => ({
  4: { most: most4 },
  3: { most: most3 },
  2: { most: most2 },
  1: { most: most1 },
})
const line = anAskedMeasure({ what: 'bodyTilt', at: 'entry', unit: 'degrees', bands: bandsBelow(5, 10, 30, 45) })
const arms = anAskedMeasure({ what: 'armAngle', at: 'take-off', unit: 'degrees', bands: bandsBelow(8, 15, 45, 90) })
const of = (measure: AskedMeasure, value: number, sd: number, critical = false, place: '1m' | '5m' = '1m') =>
  suggest(measuredAs(value, sd), { critical, measure }, place)

describe('what a value suggests', () => {
  it.each<[string, AskedMeasure, number, number, string]>([
    ['a line near plumb', line, 2, 1, 'suggests 4'],
    ['the same to the other side', line, -2, 1, 'suggests 4'],
    ['one that may be a point less', line, 4, 1, 'suggests 4, perhaps 3'],
    ['one that may be a point more', line, 6, 1, 'suggests 3, perhaps 4'],
    ['an unsure one', line, 9, 3, 'suggests 3, perhaps 2 or 4'],
    ['an hour short', arms, -34, 2, 'suggests 2'],
    ['arms that hang', arms, 118, 2, 'suggests 0'],
    ['a distance', anAskedMeasure(), 0.9, 0.05, 'suggests 4'],
    ['a far one', anAskedMeasure(), 1.9, 0.05, 'suggests 3'],
    ['one on the limit', anAskedMeasure(), 0.58, 0.05, 'suggests 2, perhaps 1 or 3'],
  ])('%s', (_, measure, value, sd, said) => {
    expect(saySuggestion(of(measure, value, sd))).toBe(said)
  })

  it('is nothing outside what is plausible, and says so of what would be unsafe', () => {
    expect(saySuggestion(of(line, 60, 2))).toBe('check the points, for this is hardly possible')
    expect(of(anAskedMeasure(), 0.2, 0.05, true)).toEqual({ kind: 'check the points', unsafe: true })
    expect(saySuggestion(of(anAskedMeasure(), 0.2, 0.05, true))).toBe(
      'check the points, for this is hardly possible; if they stand, it is unsafe',
    )
    expect(of(anAskedMeasure(), 4, 0.05, true)).toEqual({ kind: 'check the points', unsafe: false })
  })

  it('is never a rating for a body over the board, however sure, and says what it is', () => {
    for (const [value, sd] of [
      [-0.8, 0.05],
      [-0.02, 0.3],
      [-4, 0.1],
    ] as const) {
      expect(of(anAskedMeasure(), value, sd, true)).toEqual({ kind: 'over the board' })
      expect(saySuggestion(of(anAskedMeasure(), value, sd, true))).toBe(
        'over the board, so check the points; if they stand, it is unsafe',
      )
    }
    // One that may be over it is perhaps a 0.
    expect(saySuggestion(of(anAskedMeasure(), 0.5, 0.3, true))).toBe('suggests 2, perhaps 0, 1, 3 or 4')
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('is nothing for %s', (value) => {
    expect(of(anAskedMeasure(), value, 0.1, true).kind).toBe('check the points')
    expect(of(anAskedMeasure(), 1, Number.NaN, true).kind).toBe('check the points')
  })

  it('judges a flight by what its board allows, and without a range where none is kept', () => {
    const rise = anAskedMeasure({ what: 'rise', at: 'whole flight' })
    expect(of(rise, 3, 0.1)).toEqual({ kind: 'check the points', unsafe: false })
    expect(of(rise, 3, 0.1, false, '5m')).toMatchObject({ rating: 3 })
  })
})

describe('the sizes of an interval', () => {
  it.each<[MeasureName, number, number, readonly [number, number]]>([
    ['bodyTilt', -4, 6, [0, 6]],
    ['bodyTilt', 80, 100, [80, 90]],
    ['bodyTilt', -200, 200, [0, 90]],
    ['armAngle', 170, 200, [160, 180]],
    ['armAngle', -40, -20, [20, 40]],
    ['rise', 0.5, 0.9, [0.5, 0.9]],
    ['distanceFromTip', -0.9, -0.7, [-0.9, -0.7]],
    ['distanceFromTip', -0.1, 0.4, [-0.1, 0.4]],
    ['rotationRate', -500, -300, [300, 500]],
    ['rotationRate', -Infinity, 3, [0, Infinity]],
  ])('of %s from %d to %d', (what, low, high, sizes) => {
    expect(sizesOf(what, low, high)).toEqual(sizes)
  })
})

// Bands that lie inside each other, from eight values in order; whole numbers, so that ends are met.
const nested = (facts: (typeof measureFacts)[MeasureName]) =>
  fc
    .array(fc.integer({ min: facts.sizes[0], max: facts.sizes[1] }), { minLength: 8, maxLength: 8 })
    .map((values) => values.sort((a, b) => a - b))
    .map(
      ([a, b, c, d, e, f, g, h]): Bands => ({
        1: { least: a, most: h },
        2: { least: b, most: g },
        3: { least: c, most: f },
        4: { least: d, most: e },
      }),
    )
const cases = fc.constantFrom(...measureNames).chain((what) =>
  nested(measureFacts[what]).chain((bands) =>
    fc.record({
      measure: fc.constant(anAskedMeasure({ what, unit: measureFacts[what].unit, bands })),
      value: fc.integer({ min: -measureFacts[what].sizes[1], max: measureFacts[what].sizes[1] }),
      sd: fc.double({ min: 0, max: measureFacts[what].sizes[1], noNaN: true }),
      more: fc.double({ min: 0, max: measureFacts[what].sizes[1], noNaN: true }),
    }),
  ),
)
const suggested = (measure: AskedMeasure, value: number, sd: number): Suggested | null => {
  const found = of(measure, value, sd, true, '5m')
  return found.kind === 'suggested' ? found : null
}

describe('by law', () => {
  const runs = { seed: 25, numRuns: 1000 }

  it('the rating lies in its range, and a wider interval never has a narrower one', () => {
    fc.assert(
      fc.property(cases, ({ measure, value, sd, more }) => {
        const [sure, unsure] = [suggested(measure, value, sd), suggested(measure, value, sd + more)]
        fc.pre(sure !== null && unsure !== null)
        expect(sure.from).toBeLessThanOrEqual(sure.rating)
        expect(sure.to).toBeGreaterThanOrEqual(sure.rating)
        expect(unsure.rating).toBe(sure.rating)
        expect(unsure.from).toBeLessThanOrEqual(sure.from)
        expect(unsure.to).toBeGreaterThanOrEqual(sure.to)
      }),
      runs,
    )
  })

  it('every rating in the interval is in the range', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: -1.96, max: 1.96, noNaN: true }), ({ measure, value, sd }, within) => {
        const [whole, one] = [suggested(measure, value, sd), suggested(measure, value + within * sd, 0)]
        fc.pre(whole !== null && one !== null)
        expect(one.rating).toBeGreaterThanOrEqual(whole.from)
        expect(one.rating).toBeLessThanOrEqual(whole.to)
      }),
      runs,
    )
  })

  it('nearer to the best never suggests less', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1, noNaN: true }), ({ measure, value, sd }, way) => {
        const [size] = sizesOf(measure.what, value, value)
        const { least = 0, most = 0 } = measure.bands[4]
        const best = Math.min(Math.max(size, least), most)
        const [far, near] = [
          suggested(measure, size, sd),
          suggested(measure, Math.round(size + way * (best - size)), 0),
        ]
        fc.pre(far !== null && near !== null)
        expect(near.rating).toBeGreaterThanOrEqual(far.rating)
      }),
      runs,
    )
  })
})

it('is said in sentences', () => {
  expect([sayRated(2, null), sayRated(3, 'SB'), sayRated(null, 'SB')]).toEqual([
    'rated 2',
    'rated 3 by SB',
    'not rated',
  ])
  expect(sayAsked(arms)).toEqual([
    'Measured on video: how far the arms are from straight up, as the take-off begins, with the board at its lowest.',
    'It suggests a 4 up to 8°, a 3 up to 15°, a 2 up to 45° and a 1 up to 90°; the coach decides.',
    'These numbers are the programme’s judgement.',
  ])
  expect(sayAsked(anAskedMeasure({ basis: 'published', source: 'A study of one board' }))).toEqual([
    'Measured on video: how far the nearest part of the body is from the tip of the board, measured level, as the body passes the level of the board on the way down.',
    'It suggests a 4 from 0.75 to 1.5 m, a 3 from 0.6 m, a 2 from 0.5 m and a 1 from 0.3 m; the coach decides.',
    'These numbers were published: A study of one board.',
    'Nearer than the facility’s own limit is unsafe, whatever it suggests.',
  ])
})
