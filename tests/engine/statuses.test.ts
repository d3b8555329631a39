import { describe, expect, it } from 'vitest'
import { find } from '@/lib/assessment/readiness/evaluate'
import type { Context } from '@/lib/assessment/readiness/evaluation'
import type { Finding } from '@/lib/assessment/readiness/finding'
import type { DiverRecord } from '@/lib/assessment/record'
import { parseDay } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { aDecision, aRecognition, aRecord, aSignOff } from '@/tests/support/record'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { asked, coast, curriculumOf, dived, divedBut, holding, shown, today } from '../support/small-coast'

// One worked case for each cell of the status table: leaf kind by status. Standard here: 2 of the last 3 within 60
// days, two coaches, two days; valid 180 days; recheck 1 of 2 within 90 days.
const at = (record: DiverRecord, node: Requirement, context: Context = 'training', curriculum: Curriculum = coast) =>
  find(asked(record, today, curriculum), node, context)
const says = ({ status, reason }: Finding) => [status, reason.code]

describe('signOff', () => {
  const leaf: Requirement = { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'one' }

  it('is met while it is current', () => {
    const record = holding(['tread@poolside', 'jump@1m'], today - 10)
    const finding = at(record, leaf)
    expect(finding.status).toBe('met')
    expect(finding.reason).toEqual({
      code: 'signed',
      level: 'one',
      day: today - 10,
      validUntil: today + 170,
      byOverride: false,
      recognised: false,
    })
    expect(finding.evidence).toEqual([`signed jump@1m one ${today - 10}`])
  })

  it('is lapsed after its last valid day, until the recheck may renew it no more', () => {
    const on = (ago: number) => at(holding(['jump@1m'], today - ago), leaf)
    expect(on(180).status).toBe('met')
    expect(says(on(181))).toEqual(['lapsed', 'lapsed'])
    expect(on(181).reason).toMatchObject({ day: today - 1, renewBy: today + 89 })
    expect(on(270).status).toBe('lapsed')
    expect(says(on(271))).toEqual(['unproven', 'not enough'])
  })

  it('is lapsed while in doubt, even though a shortfall stands', () => {
    const record = holding(['jump@1m'], today - 10, {
      attempts: [divedBut('jump@1m', today - 1, { 'feet-together': 2 })],
    })
    const finding = at(record, leaf)
    expect(says(finding)).toEqual(['lapsed', 'in doubt'])
    expect(finding.reason).toMatchObject({ doubt: { kind: 'shortfall', shortfall: { rating: 2, expected: 3 } } })
    expect(finding.evidence).toHaveLength(2)
  })

  it('is unproven when too little was seen, and says what is wanted', () => {
    const finding = at(aRecord({ attempts: [dived('101C@1m', today)] }), { ...leaf, skill: '101C' })
    expect(says(finding)).toEqual(['unproven', 'not enough'])
    expect(finding.reason).toMatchObject({ shortage: { successes: 1, coaches: 1, days: 1, standing: [], unseen: [] } })
  })

  it('is unproven when the standard is reached and nobody has signed', () => {
    const record = holding(['tread@poolside'], today - 10, { attempts: shown('jump@1m', today) })
    expect(says(at(record, leaf))).toEqual(['unproven', 'to sign'])
  })

  it('is unproven when the standard is reached before what it rests on', () => {
    const finding = at(aRecord({ attempts: shown('jump@1m', today) }), leaf)
    expect(says(finding)).toEqual(['unproven', 'waits for what it rests on'])
    expect(finding.children.map(says)).toEqual([['unproven', 'not enough']])
    expect(finding.binding).toEqual([0])
  })

  it('says the lower level at which it is signed', () => {
    const record = holding(['jump@1m'], today - 100)
    expect(at(record, { ...leaf, atLevel: 'two' }).reason).toMatchObject({ code: 'not enough', signedAt: 'one' })
  })

  it('is unmet when more than the standard allows of the last attempts failed', () => {
    const failed = (minute: number) => divedBut('jump@1m', today, { 'board-pushed': 0 }, { minute })
    const one = aRecord({ attempts: [failed(0)] })
    const two = aRecord({ attempts: [failed(0), failed(1)] })
    expect(at(one, leaf).status).toBe('unproven')
    expect(says(at(two, leaf))).toEqual(['unmet', 'failing'])
    expect(at(two, leaf).reason).toMatchObject({ failed: 2, of: 2 })
  })

  it('is unmet while a shortfall stands, called or not', () => {
    const short = divedBut('jump@1m', today, { 'feet-together': 2 }, { called: false })
    expect(says(at(aRecord({ attempts: [short] }), leaf))).toEqual(['unmet', 'standing shortfall'])
  })

  it('counts a recognition that was not shown for training, and not inside a level', () => {
    const what = { kind: 'holding', pair: 'jump@1m', level: 'one' } as const
    const record = aRecord({ recognitions: [aRecognition(what, today - 10)] })
    expect(at(record, leaf, 'training').reason).toMatchObject({ code: 'signed', recognised: true })
    const finding = at(record, leaf, 'advancement')
    expect(says(finding)).toEqual(['unproven', 'recognised, not shown'])
    expect(finding.reason).toMatchObject({ lapses: today + 110 })
    const seenHere = { ...record, attempts: [dived('jump@1m', today)] }
    expect(at(seenHere, leaf, 'advancement').status).toBe('met')
  })

  it('takes the lowest level that teaches the skill where the author names none', () => {
    const bare: Requirement = { kind: 'signOff', skill: 'jump', place: '3m' }
    const signed = (level: string) => aRecord({ signOffs: [aSignOff('jump@3m', level, today)] })
    expect(at(signed('two'), bare).status).toBe('met')
    expect(at(signed('one'), bare).status).toBe('unproven')
  })
})

describe('criterion', () => {
  const leaf: Requirement = {
    kind: 'criterion',
    criterion: 'upright',
    at: [
      { skill: 'jump', place: '1m' },
      { skill: '101C', place: '1m' },
    ],
    rating: 3,
    times: 2,
    of: 3,
    withinDays: 30,
  }
  const rated = (...ratings: readonly (0 | 1 | 2 | 3 | 4)[]) =>
    aRecord({
      attempts: ratings.map((rating, minute) =>
        divedBut(minute % 2 === 0 ? 'jump@1m' : '101C@1m', today, { upright: rating }, { minute }),
      ),
    })

  it('is met by enough of the last ratings, over all the pairs named', () => {
    expect(says(at(rated(3, 1, 4), leaf))).toEqual(['met', 'rated'])
    expect(at(rated(3, 4, 1, 1), leaf).status).not.toBe('met')
  })

  it('is unproven while there are too few', () => {
    expect(says(at(rated(3), leaf))).toEqual(['unproven', 'rated too seldom'])
    expect(at(rated(3, 2), leaf).status).toBe('unproven')
  })

  it('is unmet when too many of the last fell short', () => {
    const finding = at(rated(2, 2, 4), leaf)
    expect(finding.reason).toEqual({ code: 'fell short', criterion: 'upright', fell: 2, of: 3, rating: 3 })
    expect(finding.status).toBe('unmet')
  })

  it('looks only at called attempts inside the window', () => {
    const early = aRecord({ attempts: [dived('jump@1m', today - 30), dived('jump@1m', today)] })
    expect(at(early, leaf).reason).toMatchObject({ code: 'rated too seldom', reached: 1 })
    const uncalled = aRecord({ attempts: [dived('jump@1m', today), dived('101C@1m', today, 4, { called: false })] })
    expect(at(uncalled, leaf).reason).toMatchObject({ reached: 1 })
  })

  it('of a critical criterion is unmet while it fell short at any pair named, whatever the count', () => {
    const critical: Requirement = { ...leaf, criterion: 'hands-locked', at: [{ skill: '101C', place: '1m' }], times: 1 }
    const short = divedBut('101C@1m', today, { 'hands-locked': 2 }, { called: false })
    const sound = (minute: number) => dived('101C@1m', today, 4, { minute })
    const held = aRecord({ attempts: [short, sound(1), sound(2)] })
    expect(says(at(held, critical))).toEqual(['unmet', 'criterion shortfall'])
    expect(at({ ...held, attempts: [...held.attempts, sound(3)] }, critical).status).toBe('met')
  })

  it('of what the edition lacks is never met', () => {
    expect(says(at(rated(4, 4), { ...leaf, criterion: 'gone' }))).toEqual(['unproven', 'not in this edition'])
  })
})

describe('level and boardMove', () => {
  const leaf: Requirement = { kind: 'level', level: 'one' }
  const approved = aDecision('level:one', 'approve', today - 5)
  const record = (changes: Partial<DiverRecord>) => holding(['tread@poolside'], today - 10, changes)

  it('is met when approved and still holding', () => {
    const finding = at(record({ decisions: [approved] }), leaf)
    expect(says(finding)).toEqual(['met', 'approved'])
    expect(finding.evidence).toEqual([approved.id])
  })

  it('is lapsed, to review, when what it asks no longer holds', () => {
    const short = divedBut('tread@poolside', today, { 'clear-water': 1 })
    const finding = at(record({ decisions: [approved], attempts: [short] }), leaf)
    expect(says(finding)).toEqual(['lapsed', 'to review'])
    expect(finding.children.map(says)).toEqual([['lapsed', 'in doubt']])
  })

  it('is unproven before a decision, and a return decides nothing', () => {
    expect(says(at(record({}), leaf))).toEqual(['unproven', 'not approved'])
    const returned = record({ decisions: [aDecision('level:one', 'return', today - 5)] })
    expect(says(at(returned, leaf))).toEqual(['unproven', 'not approved'])
  })

  it('is unmet when withdrawn', () => {
    const decisions = [approved, aDecision('level:one', 'withdraw', today - 1)]
    expect(says(at(record({ decisions }), leaf))).toEqual(['unmet', 'withdrawn'])
  })

  it('recognised is met in training; inside a level only when its own requirement is met here', () => {
    const recognitions = [aRecognition({ kind: 'level', level: 'one' }, today - 5)]
    const elsewhere = aRecord({ recognitions })
    expect(at(elsewhere, leaf).reason).toMatchObject({ code: 'approved', recognised: true })
    expect(says(at(elsewhere, leaf, 'advancement'))).toEqual(['unproven', 'recognised, not shown here'])
    expect(at(record({ recognitions }), leaf, 'advancement').status).toBe('met')
  })

  it('withdrawn and recognised: the later of them, in whatever order the rows come', () => {
    const what = { kind: 'level', level: 'one' } as const
    const decisions = [approved, aDecision('level:one', 'withdraw', today - 3)]
    const [before, after] = [aRecognition(what, today - 4), aRecognition(what, today - 2)]
    const status = (...recognitions: DiverRecord['recognitions']) =>
      at(record({ decisions, recognitions }), leaf, 'training').status
    expect([status(before), status(after)]).toEqual(['unmet', 'met'])
    expect([status(before, after), status(after, before)]).toEqual(['met', 'met'])
  })

  it('a level implies those below it, whether approved or recognised', () => {
    const higher = record({ decisions: [aDecision('level:two', 'approve', today - 5)] })
    expect(at(higher, leaf).status).toBe('met')
    const recognised = aRecord({ recognitions: [aRecognition({ kind: 'level', level: 'three' }, today - 5)] })
    expect(at(recognised, leaf).status).toBe('met')
    expect(at(recognised, { kind: 'level', level: 'three' }).status).toBe('met')
  })

  it('waives age where an override waived it, and not in the next move', () => {
    const move: Requirement = { kind: 'boardMove', family: 'forward', to: '3m' }
    const simple = curriculumOf({
      boardMoves: tinyEdition().boardMoves.map((one) => ({
        ...one,
        requirement: { kind: 'age' as const, min: 9, on: 'year-end' as const },
      })),
    })
    const decide = (waivesAge: boolean) =>
      aRecord({
        born: parseDay('2018-06-01'),
        decisions: [aDecision('move:forward:3m', 'override', today, { waivesAge })],
      })
    expect(at(decide(true), move, 'advancement', simple).reason).toMatchObject({ code: 'approved', byOverride: true })
    expect(says(at(decide(false), move, 'advancement', simple))).toEqual(['lapsed', 'to review'])
  })
})

describe('age', () => {
  const born = parseDay('2017-03-08')
  const on = (min: number | undefined, max: number | undefined, when: 'the date' | 'year-end', birth = born) =>
    at(aRecord({ born: birth }), {
      kind: 'age',
      on: when,
      ...(min === undefined ? {} : { min }),
      ...(max === undefined ? {} : { max }),
    })

  it('is met inside the limits, both inclusive', () => {
    expect(on(8, 8, 'the date').reason).toEqual({ code: 'of age', age: 8 })
    expect(on(9, 9, 'year-end').reason).toEqual({ code: 'of age', age: 9 })
  })

  it('is unmet when too young, with the day on which that ends', () => {
    expect(on(9, undefined, 'the date').reason).toEqual({
      code: 'too young',
      age: 8,
      min: 9,
      from: parseDay('2026-03-08'),
    })
    expect(on(10, undefined, 'year-end').reason).toMatchObject({ from: parseDay('2027-01-01') })
    expect(on(10, undefined, 'year-end').status).toBe('unmet')
  })

  it('is unmet when too old', () => {
    expect(says(on(undefined, 7, 'the date'))).toEqual(['unmet', 'too old'])
  })

  it('is unproven without a birth date', () => {
    expect(says(at(aRecord(), { kind: 'age', min: 9, on: 'the date' }))).toEqual(['unproven', 'no birth date'])
  })

  it('of someone born on 29 February changes on 1 March of a common year', () => {
    const leap = parseDay('2016-02-29')
    expect(on(10, undefined, 'the date', leap).status).toBe('met')
    const eve = find(
      asked(aRecord({ born: leap }), parseDay('2026-02-28')),
      { kind: 'age', min: 10, on: 'the date' },
      'training',
    )
    expect(eve.reason).toMatchObject({ code: 'too young', from: parseDay('2026-03-01') })
  })
})

describe('venue', () => {
  const leaf: Requirement = { kind: 'venue', feature: 'board-3m' }
  const flag = (has: boolean, receivedAt: number) => ({ feature: 'board-3m', has, receivedAt }) as const

  it('is what the club was last known to have', () => {
    expect(says(at(aRecord(), leaf))).toEqual(['unproven', 'venue unknown'])
    expect(says(at(aRecord({ venue: [flag(false, 1), flag(true, 2)] }), leaf))).toEqual(['met', 'venue has it'])
    expect(says(at(aRecord({ venue: [flag(false, 3), flag(true, 2)] }), leaf))).toEqual(['unmet', 'venue lacks it'])
  })
})

describe('what the edition does not have', () => {
  it.each<Requirement>([
    { kind: 'signOff', skill: 'gone', place: '1m' },
    { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'gone' },
    { kind: 'level', level: 'gone' },
    { kind: 'boardMove', family: 'inward', to: '3m' },
  ])('is named and never met: %o', (leaf) => {
    expect(says(at(aRecord(), leaf))).toEqual(['unproven', 'not in this edition'])
  })
})
