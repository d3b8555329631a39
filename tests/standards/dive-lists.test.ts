import { describe, expect, it } from 'vitest'
import { diveListOf } from '@/lib/assessment/dive-list/legality'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { parseDay } from '@/lib/assessment/time'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import type { Event } from '@/lib/curriculum/event/model'
import { allRated, anAttempt, aRecord, aSignOff, endOf } from '@/tests/support/record'
import { anEvent, aPart, coastWith } from '../support/dive-events'

// Age groups and junior lists: FINA Diving Regulations for Age Groups (DAG) 1 and 3.1–3.3 and World Aquatics DV 13.1–13.2, as
// reported by the Italian federation's slides of them, rijekadiving2023 and usadiving.org (18 March 2021); the rules' own
// text was not at hand. The limits (9.0 at 1 m, 9.5 at 3 m) are season data from the same slides. Sums: own arithmetic.
const date = endOf(parseDay('2026-03-07'))
const born = (iso: string) => parseDay(iso)

function answer(event: Event, dives: readonly string[], birth: string | null = null) {
  const curriculum = coastWith(dives, event)
  const held = dives.map((dive): PairKey => `${dive}@${event.place}`)
  const record = aRecord({
    born: birth === null ? null : born(birth),
    attempts: held.flatMap((key) => {
      const pair = curriculum.pairs.get(key)
      return pair ? [anAttempt(key, date.day - 2, { rated: allRated(pair, 4) })] : []
    }),
    signOffs: held.map((key) => aSignOff(key, 'one', date.day - 1)),
  })
  return diveListOf(event, evaluationOf(curriculum, record, date), 'advancement')
}

const sumOf = (found: ReturnType<typeof answer>): number =>
  found.legal === 'no' ? 0 : found.list.reduce((tenths, dive) => tenths + dive.tenths, 0)

describe('the sum of difficulty under a junior limit', () => {
  it('AG-5: 101B, 201B, 301B, 401B and 5211A come to 7.9 at 1 m, and 9.0 is allowed', () => {
    const found = answer(anEvent('1m', [aPart(5, 5, 90)]), ['101B', '201B', '301B', '401B', '5211A'])
    expect(found.legal).toBe('now')
    expect(sumOf(found)).toBe(79)
  })

  it('AG-6: 103B, 201B, 301B, 403C and 5231D come to 9.2 at 3 m, and 9.5 is allowed', () => {
    const found = answer(anEvent('3m', [aPart(5, 5, 95)]), ['103B', '201B', '301B', '403C', '5231D'])
    expect(found.legal).toBe('now')
    expect(sumOf(found)).toBe(92)
  })

  it('AG-7: 105B, 203B, 303B, 403B and 5132D come to 11.1 at 3 m, which is over 9.5', () => {
    const found = answer(anEvent('3m', [aPart(5, 5, 95)]), ['105B', '203B', '303B', '403B', '5132D'])
    expect(found).toMatchObject({ legal: 'no', because: [{ kind: 'over the cap', least: 111, cap: 95 }] })
  })

  it('is inclusive: a list may come to the limit itself (the same slides, "coeff. max")', () => {
    const dives = ['103B', '201B', '301B', '403C', '5231D']
    expect(answer(anEvent('3m', [aPart(5, 5, 92)]), dives).legal).toBe('now')
    expect(answer(anEvent('3m', [aPart(5, 5, 91)]), dives).legal).toBe('no')
  })
})

describe('the age for a season', () => {
  const band = (from: number, to: number, season = 2026) => anEvent('1m', [aPart(1)], { season, ageBand: { from, to } })

  it('AG-1, AG-8: is that of 31 December: born that day in 2012 is 14 in 2026, born a day later is 13', () => {
    expect(answer(band(14, 15), ['101B'], '2012-12-31').legal).toBe('now')
    expect(answer(band(12, 13), ['101B'], '2012-12-31')).toMatchObject({
      because: [{ kind: 'outside the band', age: 14 }],
    })
    expect(answer(band(12, 13), ['101B'], '2013-01-01').legal).toBe('now')
    expect(answer(band(14, 15), ['101B'], '2013-01-01')).toMatchObject({
      because: [{ kind: 'outside the band', age: 13 }],
    })
  })

  it('AG-2: in 2023 those born in 2008 and 2009 were 14 or 15, those of 2005 to 2007 from 16 to 18', () => {
    for (const year of [2008, 2009])
      for (const day of ['01-01', '12-31'])
        expect(answer(band(14, 15, 2023), ['101B'], `${year}-${day}`).legal).toBe('now')
    for (const year of [2005, 2006, 2007])
      for (const day of ['01-01', '12-31'])
        expect(answer(band(16, 18, 2023), ['101B'], `${year}-${day}`).legal).toBe('now')
    expect(answer(band(14, 15, 2023), ['101B'], '2007-12-31').legal).toBe('no')
    expect(answer(band(16, 18, 2023), ['101B'], '2008-01-01').legal).toBe('no')
  })

  it('AG-3: bands belong to a season: who was 16 in the group of 2021 is too old for that of another year', () => {
    expect(answer(band(15, 16, 2021), ['101B'], '2005-06-01').legal).toBe('now')
    expect(answer(band(14, 15, 2021), ['101B'], '2005-06-01').legal).toBe('no')
  })

  it('cannot be told without a birth date, and is not asked where there is no band', () => {
    expect(answer(band(14, 15), ['101B'])).toMatchObject({ because: [{ kind: 'no birth date' }] })
    expect(answer(anEvent('1m', [aPart(1)]), ['101B']).legal).toBe('now')
  })
})

// World Aquatics DV 5.1–5.2 as reported in secondary sources; 528 of 528 complete men's and 510 of 510 women's 3 m lists in
// published results have these counts, five groups, and no number twice.
describe('senior lists without a limit', () => {
  const five = ['107B', '205B', '305C', '405C', '5152B']

  it('CL-1, CL-2: six dives or five, from five groups', () => {
    expect(answer(anEvent('3m', [aPart(6, 5)]), [...five, '109C']).legal).toBe('now')
    expect(answer(anEvent('3m', [aPart(5, 5)]), five).legal).toBe('now')
    expect(answer(anEvent('3m', [aPart(5, 5)]), ['107B', '205B', '305C', '405C', '109C'])).toMatchObject({
      because: [{ kind: 'too few families', held: 4, wanted: 5 }],
    })
  })

  it('CL-3: another position is the same number, and no second dive', () => {
    expect(answer(anEvent('3m', [aPart(6, 5)]), [...five, '107C'])).toMatchObject({
      because: [{ kind: 'too few dives', held: 5, wanted: 6 }],
    })
  })
})
