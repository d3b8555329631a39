import { describe, expect, it } from 'vitest'
import { isClosed, openState, signable } from '@/lib/assessment/open'
import type { DiverRecord } from '@/lib/assessment/record'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { aDecision, anIncident, aRecognition, aRecord, aSignOff, aStandDown, noonOf } from '@/tests/support/record'
import { asked, curriculumOf, dived, divedBut, holding, holdingAll, shown, today } from '../support/small-coast'

const open = (record: DiverRecord, key: PairKey, day = today) => openState(asked(record, day), key)
const base = holdingAll(['tread@poolside', 'jump@1m', '101C@1m'], today - 10)
const with_ = (changes: Partial<DiverRecord>): DiverRecord => ({ ...base, ...changes })

describe('a pair', () => {
  it('without a prerequisite is open, and closed by one that is not met', () => {
    expect(open(aRecord(), 'tread@poolside')).toEqual({ state: 'open', because: null })
    const closed = open(aRecord(), 'jump@1m')
    expect(closed).toMatchObject({ state: 'closed', because: { status: 'unproven', reason: { code: 'not enough' } } })
  })

  it('is held while current or recognised, and open again when lapsed', () => {
    expect(open(base, '101C@1m').state).toBe('held')
    expect(open(base, '101C@1m', today + 171).state).toBe('closed')
    const treads = holding(['tread@poolside', 'jump@1m'], today - 10, {
      attempts: [dived('tread@poolside', today + 160)],
    })
    expect(open(treads, 'jump@1m', today + 171).state).toBe('open')
    const what = { kind: 'holding', pair: '101C@1m', level: 'one' } as const
    expect(open(aRecord({ recognitions: [aRecognition(what, today)] }), '101C@1m').state).toBe('held')
  })

  it('opens above what is recognised, for training', () => {
    const what = { kind: 'holding', pair: 'tread@poolside', level: 'one' } as const
    expect(open(aRecord({ recognitions: [aRecognition(what, today)] }), 'jump@1m').state).toBe('open')
  })

  it('is closed by doubt below it, and open to clear a doubt of its own', () => {
    const short = (key: PairKey, criterion: string) =>
      with_({
        attempts: [...base.attempts, divedBut(key, today, { [criterion]: 1 })],
      })
    expect(open(short('tread@poolside', 'clear-water'), 'jump@1m').state).toBe('closed')
    expect(open(short('jump@1m', 'feet-together'), 'jump@1m').state).toBe('open')
  })

  it('is to sign at the highest level reached that is not held', () => {
    const treads = holding(['tread@poolside'], today - 10, { attempts: shown('jump@1m', today) })
    expect(open(treads, 'jump@1m').state).toBe('to sign')
    expect(signable(asked(treads), 'jump@1m')).toMatchObject({ level: 'three', by: 'standard' })
    const one = { ...treads, signOffs: [...treads.signOffs, aSignOff('jump@1m', 'one', today)] }
    expect(open(one, 'jump@1m').state).toBe('to sign')
    const three = { ...treads, signOffs: [...treads.signOffs, aSignOff('jump@1m', 'three', today)] }
    expect([open(three, 'jump@1m').state, signable(asked(three), 'jump@1m')]).toEqual(['held', null])
  })

  it('is not to sign before what it rests on, nor while a shortfall stands', () => {
    expect(signable(asked(aRecord({ attempts: shown('jump@1m', today) })), 'jump@1m')).toBeNull()
    const attempts = [...shown('tread@poolside', today), divedBut('tread@poolside', today, { 'clear-water': 2 })]
    expect(signable(asked(aRecord({ attempts })), 'tread@poolside')).toBeNull()
  })

  it('is signed again by the recheck within the days of grace, from successes newer than the lapse', () => {
    const signed = holding(['tread@poolside'], today - 190)
    const at = (day: number, on = today) =>
      signable(asked({ ...signed, attempts: [...signed.attempts, dived('tread@poolside', day)] }, on), 'tread@poolside')
    const [, , again] = [...signed.attempts, dived('tread@poolside', today)]
    expect(at(today)).toEqual({ level: 'one', by: 'recheck', evidence: [again?.id] })
    // The last valid day is ten days ago: a success on it kept the sign-off, so that there is nothing to renew.
    expect(at(today - 10)).toBeNull()
    expect(at(today + 80, today + 80)).not.toBeNull()
    expect(at(today + 81, today + 81)).toBeNull()
  })

  it('that the edition lacks is refused by name', () => {
    expect(() => open(base, 'gone@1m')).toThrow(/"gone@1m" is not a skill at a place of this edition/)
  })
})

describe('a stand-down', () => {
  const states = (closes: 'water' | 'boards' | 'new', keys: readonly PairKey[]) =>
    keys.map((key) => open(with_({ standDowns: [aStandDown(closes, today - 1)] }), key).state)

  it('from the water, from the boards, or from what is new', () => {
    expect(states('water', ['tread@poolside', '101C@1m'])).toEqual(['closed', 'closed'])
    expect(states('boards', ['tread@poolside', '101C@1m'])).toEqual(['held', 'closed'])
    const notHeld = with_({ standDowns: [aStandDown('new', today)], signOffs: base.signOffs.slice(0, 2) })
    expect([open(notHeld, 'jump@1m').state, open(notHeld, '101C@1m').state]).toEqual(['held', 'closed'])
    expect(open(notHeld, '101C@1m').because).toEqual({ kind: 'stand-down', closes: 'new', until: null })
  })

  it('is in force from its first to its last day', () => {
    const record = with_({ standDowns: [aStandDown('water', today, { until: today + 3 })] })
    expect([-1, 0, 3, 4].map((after) => isClosed(asked(record, today + after), '101C@1m'))).toEqual([
      false,
      true,
      true,
      false,
    ])
  })

  it('follows a knock to the head until a head coach clears it', () => {
    const knock = anIncident('101C@1m', today, { kind: 'knock to the head' })
    const record = with_({ incidents: [knock] })
    expect(open(record, 'tread@poolside').because).toMatchObject({ kind: 'stand-down', closes: 'water' })
    const cleared = with_({ incidents: [{ ...knock, clearedAt: noonOf(today, 1) }] })
    expect(open(cleared, 'tread@poolside').state).toBe('held')
  })
})

describe('an incident', () => {
  const record = with_({ incidents: [anIncident('jump@1m', today)] })

  it('pauses the pair and all that rests on it, at any remove', () => {
    expect(open(record, 'jump@1m').because).toMatchObject({ kind: 'pause', pair: 'jump@1m' })
    expect(open(record, '101C@1m').state).toBe('closed')
    expect(open(record, 'jump@3m').state).toBe('closed')
    expect(open(record, 'tread@poolside').state).toBe('held')
  })

  it('pauses what rests on what rests on it', () => {
    const far = with_({ incidents: [anIncident('tread@poolside', today)] })
    expect(open(far, '101C@1m').because).toMatchObject({ kind: 'pause', pair: 'tread@poolside' })
  })

  it('pauses what rests on it through a board move', () => {
    const moved = with_({
      signOffs: [
        ...base.signOffs,
        aSignOff('101C@1m', 'two', today - 9),
        aSignOff('jump@3m', 'two', today - 9),
        aSignOff('line-up@3m', 'two', today - 9),
        aSignOff('101C@3m', 'three', today - 8),
      ],
      decisions: [aDecision('move:forward:3m', 'approve', today - 8)],
      incidents: [anIncident('line-up@3m', today)],
    })
    expect(open(moved, '101C@3m').because).toMatchObject({ kind: 'pause', pair: 'line-up@3m' })
  })

  it('is not signed over', () => {
    const shownHere = with_({ ...record, attempts: [...base.attempts, ...shown('jump@1m', today)] })
    expect(signable(asked(shownHere), 'jump@1m')).toBeNull()
  })
})

describe('a lay-off', () => {
  // At 3 m: after 60 days without an attempt there, until the jump is shown again.
  const before = holdingAll(['tread@poolside', 'jump@1m', '101C@1m', 'jump@3m', 'line-up@3m'], today - 61, {
    attempts: [dived('101C@1m', today - 1)],
  })
  const then = (...attempts: DiverRecord['attempts']) => ({ ...before, attempts: [...before.attempts, ...attempts] })

  it('closes the place and leaves its re-entry steps open', () => {
    expect(open(before, 'line-up@3m', today - 1).state).toBe('held')
    expect(open(before, 'line-up@3m').because).toEqual({
      kind: 'lay-off',
      place: '3m',
      since: today - 61,
      reentry: ['jump@3m'],
    })
    expect(open(before, 'jump@3m').state).toBe('held')
    expect(open(before, '101C@1m').state).toBe('held')
  })

  it('lasts until each re-entry step is shown again, whatever else is dived there', () => {
    expect(open(then(dived('line-up@3m', today, 4, { closedThen: true })), 'line-up@3m').state).toBe('closed')
    expect(open(then(divedBut('jump@3m', today, { upright: 0 })), 'line-up@3m').state).toBe('closed')
    expect(open(then(dived('jump@3m', today)), 'line-up@3m').state).toBe('held')
  })

  it('asks for re-entry steps shown after the gap, also where they are done elsewhere', () => {
    const elsewhere = curriculumOf({
      layOff: [{ place: '3m', afterDays: 60, reentry: [{ skill: 'jump', place: '1m' }] }],
    })
    const state = (day: number) => openState(asked(then(dived('jump@1m', day)), today, elsewhere), 'line-up@3m').state
    expect([state(today - 5), state(today)]).toEqual(['closed', 'held'])
  })

  it('is nothing to whoever never dived there', () => {
    const never = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 10, {
      signOffs: [aSignOff('line-up@3m', 'two', today - 10)],
    })
    expect(open(never, 'line-up@3m').state).toBe('held')
  })
})
