import { describe, expect, it } from 'vitest'
import { readCurriculumFolder } from '@/seed/read-curriculum'
import { indexEdition } from '../../curriculum/edition/index-edition'
import type { MeasureInstant } from '../../curriculum/measure/model'
import { measuredAs } from '../measure/measured'
import { isAt } from './instant'
import type { Mark, MarkKey } from './mark'
import { type KeptNumbers, suggestionsOf } from './suggestions'
import { sayMeasured } from './wording'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')
const curriculum = indexEdition(document, '')

const mark = (key: MarkKey, atMs: number, frameUs: number | null = 16_667): Mark => ({ coach: 'a', key, atMs, frameUs })
const marks = [mark('take-off', 800), mark('flight', 1000), mark('highest point', 1400), mark('entry', 2050)]

describe('the instant of a frame', () => {
  it.each<[MeasureInstant, number, readonly Mark[], ReturnType<typeof isAt>]>([
    ['take-off', 800, marks, 'yes'],
    ['take-off', 840, marks, 'yes'],
    ['take-off', 841, marks, 'no'],
    ['take-off', 860, [mark('take-off', 800, 33_333)], 'yes'],
    ['take-off', 839, [mark('take-off', 800, null)], 'yes'],
    ['take-off', 800, [], { unmarked: ['take-off'] }],
    ['highest point', 1490, marks, 'yes'],
    ['highest point', 1501, marks, 'no'],
    ['passing', 1700, marks, 'yes'],
    ['passing', 1300, marks, 'no'],
    ['passing', 1400, marks, 'no'],
    ['passing', 2050, marks, 'no'],
    ['passing', 1700, [mark('entry', 2050)], { unmarked: ['highest point'] }],
    ['passing', 1700, [], { unmarked: ['highest point', 'entry'] }],
    ['whole flight', 1700, marks, 'no'],
  ])('%s at %d ms', (at, frame, made, found) => {
    expect(isAt(at, frame, made)).toEqual(found)
  })
})

describe('what a kept measure suggests', () => {
  const of = (kept: Partial<KeptNumbers>, made: readonly Mark[] = marks, key: '401B@1m' | '5132D@1m' = '401B@1m') => {
    const pair = curriculum.pairs.get(key)
    if (!pair) throw new Error(`${key} is not taught`)
    const found = suggestionsOf({ frameMs: 800, down: false, results: [], ...kept }, made, pair)
    return found.map((one) => sayMeasured(one, { rated: 2, by: null }))
  }
  const distance = (value: number, height = 0.1) => [
    { ...measuredAs(value, 0.03), what: 'distanceFromTip' },
    { ...measuredAs(height, 0.03), what: 'heightOverTip' },
  ]
  const arms = { ...measuredAs(-34, 2), what: 'armAngle' }

  it('is said for the criterion that asks for it, beside what was rated', () => {
    expect(of({ results: [arms, { ...measuredAs(10.9, 0.1), what: 'clockHour' }] })).toEqual([
      '“Arms and heels with the board”: suggests 2; rated 2.',
    ])
    expect(of({ frameMs: 1410, results: [{ ...measuredAs(58, 2), what: 'hipAngle' }] })).toEqual([
      '“Pike closed, legs straight”: suggests 3, perhaps 2; rated 2.',
    ])
    expect(of({ frameMs: 1700, results: distance(0.2) })).toEqual([
      '“Clear of the board”: check the points, for this is hardly possible; if they stand, it is unsafe; rated 2.',
    ])
    expect(of({ frameMs: null, results: [{ ...measuredAs(0.8, 0.1), what: 'rise' }] })).toEqual([
      '“Legs push the board down”: suggests 3, perhaps 2 or 4; rated 2.',
    ])
  })

  it('is never a rating for a body that comes down over the board', () => {
    expect(of({ frameMs: 1700, results: distance(0.9) })).toEqual(['“Clear of the board”: suggests 4; rated 2.'])
    expect(of({ frameMs: 1700, results: distance(-0.9) })).toEqual([
      '“Clear of the board”: over the board, so check the points; if they stand, it is unsafe; rated 2.',
    ])
  })

  it('asks for the frame in which the body passes the level of the board, and for no other', () => {
    const ask =
      'To see what it suggests for “Clear of the board”, measure on the frame in which the body passes the level of the board on the way down'
    // Half a metre clear at the board, 1.2 m out as it meets the water: only the first says how clear of it.
    expect(of({ frameMs: 1700, results: distance(0.5, 0.19) })).toEqual([
      '“Clear of the board”: suggests 2, perhaps 1; rated 2.',
    ])
    expect(of({ frameMs: 2040, results: distance(1.2, -0.9) })).toEqual([`${ask}: this point is 0.90 m below it.`])
    expect(of({ frameMs: 1500, results: distance(0.3, 0.6) })).toEqual([`${ask}: this point is 0.60 m above it.`])
    expect(of({ frameMs: 1010, results: distance(0.3) })).toEqual([`${ask}: by its coach’s marks this frame is not.`])
    expect(of({ frameMs: 1700, results: distance(0.8) }, [])).toEqual([
      'Mark “highest point” and “entry” to see what it suggests for “Clear of the board”.',
    ])
  })

  it('is nothing where it was kept without the side of the tip, at whatever frame', () => {
    for (const frameMs of [1300, 1700])
      expect(of({ frameMs, results: [{ ...measuredAs(0.8, 0.05), what: 'distanceFromTip' }] })).toEqual([
        'It suggests nothing for “Clear of the board”, for it was kept without a point on the board: nobody knows on which side of the tip the body was. Measure it again.',
      ])
  })

  it('waits for the mark that tells what it was taken at', () => {
    expect(of({ results: [arms] }, [])).toEqual([
      'Mark “take-off” to see what it suggests for “Arms and heels with the board”.',
    ])
  })

  it('is nothing at another instant, from straight down, or for a dive that does not ask for it', () => {
    expect(of({ frameMs: 1400, results: [arms] })).toEqual([])
    expect(of({ results: [arms], down: true })).toEqual([])
    expect(of({ frameMs: 1410, results: [{ ...measuredAs(58, 2), what: 'hipAngle' }] }, marks, '5132D@1m')).toEqual([])
    expect(of({ frameMs: null, results: [arms] })).toEqual([])
  })
})
