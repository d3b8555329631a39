import { describe, expect, it } from 'vitest'
import { degreesAnHour } from '@/lib/assessment/measure/angles'
import { riseFor } from '@/lib/assessment/measure/flight'
import { measuredAs } from '@/lib/assessment/measure/measured'
import { suggest } from '@/lib/assessment/measure/suggest'
import type { Place } from '@/lib/curriculum/place'
import { readCurriculumFolder } from '@/seed/read-curriculum'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')

function ratingOf(key: string, value: number, place: Place = '3m') {
  const criterion = document?.criteria.find((one) => one.key === key)
  if (!criterion?.measure) throw new Error(`${key} has no measure`)
  const found = suggest(measuredAs(value, 0), { critical: criterion.critical, measure: criterion.measure }, place)
  return found.kind === 'suggested' ? found.rating : found
}

// Hours of the clock face, common practice with no published source: hands belong at twelve, each hour short is 30°.
describe('arms as the board bottoms', () => {
  it.each(['arms-at-twelve', 'arms-with-board'])('%s: by the hour, as its anchors say', (key) => {
    expect(ratingOf(key, 0)).toBe(4)
    expect(ratingOf(key, 0.5 * degreesAnHour)).toBe(3)
    expect(ratingOf(key, -0.5 * degreesAnHour)).toBe(3)
    expect(ratingOf(key, degreesAnHour)).toBe(2)
    expect(ratingOf(key, 2 * degreesAnHour)).toBe(1)
  })
})

// Miller & Munro 1985, Int. J. Sport Biomech. 1(4):288, abstract: an Olympic champion leaves 3 m upwards at 5.0–6.0 m/s.
describe('height above the board', () => {
  it.each([5.0, 6.0])('is a model of it when a champion leaves at %d m/s', (speed) => {
    for (const key of ['press-through', 'up-before-over']) expect(ratingOf(key, riseFor(speed))).toBe(4)
  })

  // Take-off speeds of 3.5–4.5 m/s for juniors at 1 m: from memory, weak.
  it('is sound or short of it by a point for a junior at 1 m', () => {
    for (const key of ['press-through', 'up-before-over']) {
      expect(ratingOf(key, riseFor(3.5), '1m')).toBe(2)
      expect(ratingOf(key, riseFor(4.2), '1m')).toBeGreaterThanOrEqual(3)
    }
  })
})

// What judges weigh, usadiving.org: the entry vertical. The 10° and 30° are those of the anchors, with no published source.
it('the line at the water is plumb, within ten degrees, or slanted', () => {
  expect([0, 10, 11, 30, 31].map((tilt) => ratingOf('line-at-water', tilt))).toEqual([4, 3, 2, 2, 1])
  expect(ratingOf('upright-entry', 15)).toBe(3)
})

// Reverse dives from 3 m pass about 0.5–1 m from the tip: from memory, weak. The facility's own limit is not replaced.
it('the distance from the board is sound in the middle of what is usual, and nothing is sound below it', () => {
  for (const key of ['clear-of-board', 'clear-while-twisting']) {
    expect(ratingOf(key, 0.75)).toBe(4)
    expect(ratingOf(key, 0.49)).toBe(1)
    expect(ratingOf(key, 0.2)).toEqual({ kind: 'check the points', unsafe: true })
  }
})
