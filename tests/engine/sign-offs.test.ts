import { describe, expect, it } from 'vitest'
import { asOf } from '@/lib/assessment/as-of'
import { holdings } from '@/lib/assessment/holding'
import type { DiverRecord } from '@/lib/assessment/record'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { aDecision, anObservation, aRecognition, aRecord, aSignOff, endOf, noonOf } from '@/tests/support/record'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { asked, coast, curriculumOf, dived, divedBut, holding, shown, today } from '../support/small-coast'

const on = (record: DiverRecord, key: PairKey, day = today, curriculum = coast) =>
  asked(record, day, curriculum).holdings.of(key)

describe('a sign-off lapses', () => {
  it('counted from its signing, and again from each success while it was current', () => {
    const signed = holding(['jump@1m'], today - 200)
    expect(on(signed, 'jump@1m').state).toBe('lapsed')
    const refreshed = { ...signed, attempts: [...signed.attempts, dived('jump@1m', today - 20)] }
    expect(on(refreshed, 'jump@1m').by).toMatchObject({ state: 'current', validUntil: today + 160 })
  })

  it('and a success after the lapse does not bring it back', () => {
    const signed = holding(['jump@1m'], today - 200, { attempts: [dived('jump@1m', today - 19)] })
    expect(on(signed, 'jump@1m').state).toBe('lapsed')
  })

  it('but is kept by successes on what rests on it, at any remove', () => {
    const dive = holding(['101C@1m'], today - 200, {
      signOffs: [aSignOff('jump@1m', 'one', today - 300), aSignOff('101C@3m', 'three', today - 150)],
      attempts: [dived('101C@1m', today - 130), dived('101C@3m', today - 10)],
    })
    // A lead-up of a held dive does not lapse; the dive below is refreshed by the one that rests on it.
    expect(on(dive, 'jump@1m').state).toBe('current')
    const high = { ...dive, signOffs: [...dive.signOffs, aSignOff('101C@1m', 'two', today - 200)] }
    expect(on(high, '101C@1m').by).toMatchObject({ validUntil: today + 170 })
    const alone = { ...high, signOffs: high.signOffs.filter(({ pair }) => pair !== '101C@3m') }
    expect(on(alone, '101C@1m').by).toMatchObject({ validUntil: today + 50 })
  })

  it('but a lead-up is kept by a held dive only, not by another lead-up', () => {
    const record = aRecord({
      signOffs: [aSignOff('jump@1m', 'one', today - 200), aSignOff('jump@3m', 'two', today - 150)],
    })
    expect([on(record, 'jump@1m').state, on(record, 'jump@3m').state]).toEqual(['lapsed', 'in doubt'])
  })

  it('and is signed anew by the recheck, which is a sign-off of its own', () => {
    const renewed = holding(['jump@1m'], today - 200, {
      attempts: [dived('jump@1m', today - 5)],
      signOffs: [aSignOff('jump@1m', 'one', today - 5, { by: 'recheck' })],
    })
    expect(on(renewed, 'jump@1m').by).toMatchObject({ state: 'current', validUntil: today + 175 })
  })
})

describe('a level of another edition', () => {
  const record = aRecord({ signOffs: [aSignOff('101C@1m', 'former', today)] })

  it('counts for the level that it became, and for none where the edition does not say', () => {
    expect(on(record, '101C@1m')).toEqual({ state: 'none', by: null, all: [] })
    const mapped = curriculumOf({ levelMap: { former: 'two' } })
    expect(on(record, '101C@1m', today, mapped).by).toMatchObject({ state: 'current', level: 1 })
  })
})

describe('a sign-off is in doubt of its own', () => {
  const signed = holding(['jump@1m'], today - 10)
  const short = (day: number, changes = {}) => divedBut('jump@1m', day, { 'feet-together': 2 }, changes)
  const and = (...attempts: DiverRecord['attempts']) => ({ ...signed, attempts: [...signed.attempts, ...attempts] })
  const uncalled = (minute: number) => dived('jump@1m', today, 4, { minute, called: false })

  it('by a critical shortfall dived since, called or not', () => {
    expect(on(and(short(today - 5)), 'jump@1m').state).toBe('in doubt')
    expect(on(and(short(today - 5, { called: false })), 'jump@1m').state).toBe('in doubt')
    expect(on(and(divedBut('jump@1m', today - 5, { upright: 0 })), 'jump@1m').state).toBe('current')
  })

  it('by one dived before and received since, when it would have stood', () => {
    const late = short(today - 10, { minute: 60, receivedAt: noonOf(today - 2) })
    expect(on(and(late), 'jump@1m').state).toBe('in doubt')
    expect(on(and(late), 'jump@1m', today - 3).state).toBe('current')
    const answered = [-40, -39, -38].map((minute) => dived('jump@1m', today - 10, 4, { minute, called: false }))
    const old = short(today - 30, { receivedAt: noonOf(today - 2) })
    expect(on(and(old, ...answered), 'jump@1m').state).toBe('current')
  })

  it('by a second view received since', () => {
    const [first, second] = signed.attempts
    if (!first || !second) throw new Error('two attempts were built')
    const video = anObservation({ id: 'v', coach: 'cleo', ratings: { 'feet-together': 1 }, receivedAt: noonOf(today) })
    const seen = { ...second, observations: [...second.observations, video] }
    const record = { ...signed, attempts: [first, seen] }
    expect(on(record, 'jump@1m').state).toBe('in doubt')
    expect(on(record, 'jump@1m', today - 1).state).toBe('current')
  })

  it.each([
    [2, 1],
    [1, 2],
  ] as const)(
    'by a view received since, also where an earlier one fell short already: %i, then %i',
    (first, second) => {
      const views = [
        anObservation({ id: 'a', ratings: { 'feet-together': first }, receivedAt: noonOf(today - 11) }),
        anObservation({ id: 'b', coach: 'ben', ratings: { 'feet-together': second }, receivedAt: noonOf(today) }),
      ]
      const twice = dived('jump@1m', today - 11, 4, { minute: 60, observations: views })
      const { receivedAt } = twice
      expect(receivedAt).toBeLessThan(noonOf(today - 10))
      expect(on(and(twice), 'jump@1m', today - 1).state).toBe('current')
      expect(on(and(twice), 'jump@1m').state).toBe('in doubt')
    },
  )

  it('and is not cleared by successes that came before it', () => {
    const before = dived('jump@1m', today - 6)
    const record = and(before, short(today - 5), uncalled(1), uncalled(2), uncalled(3))
    expect(on(record, 'jump@1m').state).toBe('in doubt')
  })

  it('and clears when no shortfall stands and the recheck was shown since', () => {
    const called = (minute: number) => dived('jump@1m', today, 4, { minute })
    expect(on(and(short(today - 5), called(1), called(2)), 'jump@1m').state).toBe('in doubt')
    expect(on(and(short(today - 5), uncalled(1), uncalled(2), uncalled(3)), 'jump@1m').state).toBe('in doubt')
    expect(on(and(short(today - 5), uncalled(1), uncalled(2), called(3)), 'jump@1m').state).toBe('current')
  })

  it('and does not come back by later failures that are not critical', () => {
    const poor = (minute: number) => divedBut('jump@1m', today, { upright: 0 }, { minute })
    const cleared = [short(today - 5), uncalled(1), uncalled(2), dived('jump@1m', today, 4, { minute: 3 })]
    expect(on(and(...cleared, poor(4), poor(5)), 'jump@1m').state).toBe('current')
    expect(on(and(...cleared, short(today, { minute: 9 })), 'jump@1m').state).toBe('in doubt')
  })

  it('and gives way to a newer sign-off', () => {
    const again = and(short(today - 5))
    const record = { ...again, signOffs: [...again.signOffs, aSignOff('jump@1m', 'one', today - 4)] }
    expect(on(record, 'jump@1m').state).toBe('current')
  })

  it('by a cited attempt that is a success no more, until the recheck is shown after that was seen', () => {
    const [first, second] = signed.attempts
    if (!first || !second) throw new Error('two attempts were built')
    const lower = anObservation({
      id: 'corrected',
      supersedes: 'ben-saw',
      coach: 'ben',
      receivedAt: noonOf(today - 3),
      ratings: { 'feet-together': 4, 'board-pushed': 0, upright: 4 },
    })
    const fallen = { ...second, observations: [...second.observations, lower] }
    const signOffs = [aSignOff('jump@1m', 'one', today - 10, { evidence: [first.id, second.id] })]
    const record = { ...signed, attempts: [first, fallen], signOffs }
    expect(on(record, 'jump@1m').by?.doubts).toEqual([{ kind: 'evidence', attempt: second.id }])
    expect(on(record, 'jump@1m', today - 4).state).toBe('current')
    const silent = { ...lower, ratings: { 'feet-together': 4 as const } }
    const unknown = { ...second, observations: [...second.observations, silent] }
    expect(on({ ...record, attempts: [first, unknown] }, 'jump@1m').state).toBe('in doubt')
    const early = { ...record, attempts: [first, fallen, dived('jump@1m', today - 5)] }
    expect(on(early, 'jump@1m').state).toBe('in doubt')
    const after = { ...record, attempts: [first, fallen, dived('jump@1m', today - 1)] }
    expect(on(after, 'jump@1m').state).toBe('current')
  })

  it('but not by a cited attempt that nobody looked at again: a new edition alone takes nothing away', () => {
    const poor = divedBut('jump@1m', today - 10, { upright: 0 }, { minute: 60 })
    const signOffs = [aSignOff('jump@1m', 'one', today - 10, { evidence: [poor.id] })]
    expect(on({ ...and(poor), signOffs }, 'jump@1m').state).toBe('current')
  })

  it('lapses all the same, and successes in doubt do not keep it', () => {
    const old = holding(['jump@1m'], today - 175, { attempts: [short(today - 100), dived('jump@1m', today - 99)] })
    expect(on(old, 'jump@1m').state).toBe('in doubt')
    expect(on(old, 'jump@1m', today + 6).state).toBe('lapsed')
  })
})

describe('doubt from below', () => {
  const chain = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 10)

  it('rises through everything that rests on what fell, and clears with it', () => {
    const short = divedBut('tread@poolside', today - 2, { 'clear-water': 1 })
    const fell = { ...chain, attempts: [...chain.attempts, short] }
    expect(on(fell, 'jump@1m').by?.doubts).toEqual([{ kind: 'below', pair: 'tread@poolside' }])
    expect(on(fell, '101C@1m').by?.doubts).toEqual([{ kind: 'below', pair: 'jump@1m' }])
    const clean = [1, 2, 3].map((minute) => dived('tread@poolside', today - 1, 4, { minute }))
    const clear = { ...fell, attempts: [...fell.attempts, ...clean] }
    expect(on(clear, '101C@1m').state).toBe('current')
  })

  it('rises from what is revoked, which earns no credit', () => {
    const signOffs = chain.signOffs.map((one) =>
      one.pair === 'jump@1m' ? { ...one, revokedAt: noonOf(today - 1) } : one,
    )
    expect(on({ ...chain, signOffs }, 'jump@1m').state).toBe('revoked')
    expect(on({ ...chain, signOffs }, '101C@1m').state).toBe('in doubt')
    expect(on({ ...chain, signOffs }, '101C@1m', today - 2).state).toBe('current')
  })

  const restingOn = (prerequisite: Requirement) =>
    curriculumOf({
      skills: tinyEdition().skills.map((skill) =>
        skill.key === 'jump'
          ? { ...skill, places: skill.places.map((at) => (at.place === '3m' ? { ...at, prerequisite } : at)) }
          : skill,
      ),
    })
  const treads: Requirement = { kind: 'signOff', skill: 'tread', place: 'poolside' }
  const jumps: Requirement = { kind: 'signOff', skill: 'jump', place: '1m' }
  const dives: Requirement = { kind: 'signOff', skill: '101C', place: '1m' }
  const without = (record: DiverRecord, ...keys: PairKey[]) => ({
    ...record,
    signOffs: record.signOffs.map((one) => (keys.includes(one.pair) ? { ...one, revokedAt: noonOf(today) } : one)),
  })

  it('does not rise where another way holds', () => {
    const edition = restingOn({ kind: 'any', of: [treads, dives] })
    const record = holding(['101C@1m', 'jump@1m', 'tread@poolside', 'jump@3m'], today - 10)
    // The jump rests on tread as well, and the dive on the jump: both ways fall with tread, one with the dive.
    expect(on(without(record, '101C@1m'), 'jump@3m', today, edition).state).toBe('current')
    expect(on(without(record, 'tread@poolside'), 'jump@3m', today, edition).by?.doubts).toEqual([
      { kind: 'below', pair: 'tread@poolside' },
      { kind: 'below', pair: '101C@1m' },
    ])
  })

  it('is not held up by half of a way that was never whole', () => {
    const edition = restingOn({ kind: 'any', of: [{ kind: 'all', of: [treads, jumps] }, dives] })
    const record = holding(['tread@poolside', '101C@1m', 'jump@3m'], today - 10)
    expect(on(record, 'jump@3m', today, edition).state).toBe('current')
    expect(on(without(record, '101C@1m'), 'jump@3m', today, edition).by?.doubts).toEqual([
      { kind: 'below', pair: '101C@1m' },
    ])
  })

  it('rises from a board move that is withdrawn, not from one that was never decided', () => {
    const dive = aRecord({ signOffs: [aSignOff('101C@1m', 'two', today - 9), aSignOff('101C@3m', 'three', today - 9)] })
    expect(on(dive, '101C@3m').state).toBe('current')
    const move = 'move:forward:3m'
    const decisions = [aDecision(move, 'approve', today - 12), aDecision(move, 'withdraw', today - 1)]
    expect(on({ ...dive, decisions }, '101C@3m').by?.doubts).toEqual([{ kind: 'withdrawn below', target: move }])
    expect(on({ ...dive, decisions }, '101C@3m', today - 2).state).toBe('current')
  })

  it('rises through a board move from what it asks', () => {
    const decisions = [aDecision('move:forward:3m', 'approve', today - 12)]
    const signOffs = [
      aSignOff('101C@1m', 'two', today - 13),
      aSignOff('line-up@3m', 'two', today - 13, { revokedAt: noonOf(today) }),
      aSignOff('101C@3m', 'three', today - 9),
    ]
    expect(on(aRecord({ decisions, signOffs }), '101C@3m').by?.doubts).toEqual([{ kind: 'below', pair: 'line-up@3m' }])
  })

  it('is not made by a prerequisite that was never held: a new edition takes nothing away', () => {
    expect(on(holding(['101C@1m'], today - 10), '101C@1m').state).toBe('current')
  })

  it('rises from what fell beside a prerequisite that was never held', () => {
    const signed = (key: PairKey, revoked = false) =>
      aSignOff(key, 'two', today - 10, { revokedAt: revoked ? noonOf(today) : null })
    const with_ = (revoked: boolean) => aRecord({ signOffs: [signed('jump@3m', revoked), signed('line-up@3m')] })
    expect(on(with_(false), 'line-up@3m').by?.doubts).toEqual([])
    expect(on(with_(true), 'line-up@3m').by?.doubts).toEqual([{ kind: 'below', pair: 'jump@3m' }])
  })
})

describe('a recognition', () => {
  const what = { kind: 'holding', pair: 'jump@1m', level: 'one' } as const
  const recognised = (ago: number, attempts: DiverRecord['attempts'] = []) =>
    on(aRecord({ recognitions: [aRecognition(what, today - ago)], attempts }), 'jump@1m')

  it('lapses after 120 days unless it is shown', () => {
    expect(recognised(120).state).toBe('recognised')
    expect(recognised(121).state).toBe('lapsed')
  })

  it('shown by the recheck is a current holding from then on', () => {
    expect(recognised(121, [dived('jump@1m', today - 1)]).by).toMatchObject({
      state: 'current',
      shown: true,
      validUntil: today + 179,
    })
    expect(recognised(130, [dived('jump@1m', today - 1)]).state).toBe('lapsed')
    expect(recognised(10, [dived('jump@1m', today - 20)]).state).toBe('recognised')
  })

  it('is in doubt by a shortfall, and revoked with a reason', () => {
    expect(recognised(10, [divedBut('jump@1m', today, { 'feet-together': 0 })]).state).toBe('in doubt')
    const gone = aRecord({ recognitions: [aRecognition(what, today - 9, { revokedAt: noonOf(today) })] })
    expect(on(gone, 'jump@1m').state).toBe('revoked')
  })
})

describe('as of a date', () => {
  it('counts only what was received by then', () => {
    const late = dived('jump@1m', today - 5, 4, { receivedAt: noonOf(today) })
    const record = aRecord({ attempts: [late, dived('jump@1m', today - 6)] })
    expect(asOf(record, endOf(today - 1)).attempts).toHaveLength(1)
    expect(asOf(record, endOf(today)).attempts.map(({ day }) => day)).toEqual([today - 6, today - 5])
  })

  it('undoes what was revoked, released, accepted or cleared later', () => {
    const later = noonOf(today)
    const record = aRecord({
      attempts: [dived('jump@1m', today - 9, 4, { closedThen: true, releasedAt: later })],
      signOffs: [aSignOff('jump@1m', 'one', today - 9, { revokedAt: later })],
      recognitions: [aRecognition({ kind: 'level', level: 'one' }, today - 9, { revokedAt: later })],
    })
    const then = asOf(record, endOf(today - 1))
    expect([then.attempts[0]?.releasedAt, then.signOffs[0]?.revokedAt, then.recognitions[0]?.revokedAt]).toEqual([
      null,
      null,
      null,
    ])
    expect(asOf(record, endOf(today))).toEqual(record)
  })

  it('gives every pair that was signed or recognised', () => {
    const record = holding(['tread@poolside', 'jump@1m'], today - 3, { attempts: shown('101C@1m', today) })
    expect([...holdings(coast, record, endOf(today)).keys()].sort()).toEqual(['jump@1m', 'tread@poolside'])
    expect(holdings(coast, record, endOf(today - 4)).size).toBe(0)
  })
})
