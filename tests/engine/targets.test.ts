import { describe, expect, it } from 'vitest'
import { readySince } from '@/lib/assessment/readiness/ready-since'
import { evaluateTarget, listTargets, overridesUnder, readTarget } from '@/lib/assessment/readiness/targets'
import type { DiverRecord, TargetKey } from '@/lib/assessment/record'
import { parseDay } from '@/lib/assessment/time'
import {
  aDecision,
  anIncident,
  aRecognition,
  aRecord,
  aSignOff,
  aStandDown,
  endOf,
  noonOf,
} from '@/tests/support/record'
import { asked, coast, dived, divedBut, holding, today } from '../support/small-coast'

const at = (record: DiverRecord, target: TargetKey = 'level:one', day = today) =>
  evaluateTarget(coast, record, target, endOf(day))
const base = holding(['tread@poolside'], today - 10)
const with_ = (changes: Partial<DiverRecord>): DiverRecord => ({ ...base, ...changes })

describe('a target', () => {
  it('is listed: levels in order, then board moves', () => {
    expect(listTargets(coast)).toEqual(['level:one', 'level:two', 'level:three', 'move:forward:3m'])
  })

  it('is ready when what it asks is met, it is not held, and nothing stands against it', () => {
    expect(at(base)).toMatchObject({ held: 'no', ready: true, blocks: [] })
    expect(at(aRecord())).toMatchObject({ held: 'no', ready: false })
    expect(at(with_({ decisions: [aDecision('level:one', 'approve', today)] }))).toMatchObject({
      held: 'approved',
      ready: false,
    })
  })

  it('of a level asks the level below', () => {
    const dives = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 10)
    expect(at(dives, 'level:two')).toMatchObject({ ready: false, finding: { status: 'unproven' } })
    const approved = { ...dives, decisions: [aDecision('level:one', 'approve', today)] }
    expect(at(approved, 'level:two')).toMatchObject({ ready: true })
  })

  it('is recognised, or to review', () => {
    const recognitions = [aRecognition({ kind: 'level', level: 'one' }, today)]
    expect(at(with_({ recognitions }))).toMatchObject({ held: 'recognised', ready: false })
    const short = divedBut('tread@poolside', today, { 'clear-water': 1 })
    const decisions = [aDecision('level:one', 'approve', today - 1)]
    expect(at(with_({ decisions, attempts: [...base.attempts, short] }))).toMatchObject({ held: 'to review' })
  })

  it('shows what an override of age would find, and waives nothing else', () => {
    const young = holding(['101C@1m', 'jump@1m', 'line-up@3m'], today - 10, {
      born: parseDay('2019-01-01'),
      venue: [{ feature: 'board-3m', has: true, receivedAt: 0 }],
      signOffs: [aSignOff('101C@1m', 'two', today - 9)],
    })
    const move = 'move:forward:3m'
    expect(at(young, move).finding.status).toBe('unmet')
    const evaluation = asked(young)
    expect(readTarget(evaluation, move, { age: true })).toMatchObject({ ready: true })
    expect(readTarget(evaluation, move)).toMatchObject({ ready: false })
    const nowhere = { ...young, venue: [{ feature: 'board-3m', has: false, receivedAt: 0 } as const] }
    expect(readTarget(asked(nowhere), move, { age: true })).toMatchObject({ ready: false })
    const decided = { ...young, decisions: [aDecision(move, 'override', today, { waivesAge: true })] }
    expect(at(decided, move)).toMatchObject({ held: 'approved' })
  })

  it('says which overrides it rests on', () => {
    const signOffs = base.signOffs.map((one) => ({ ...one, waiver: { coaches: true } as const }))
    const evaluation = asked(with_({ signOffs }))
    expect(overridesUnder(evaluation, readTarget(evaluation, 'level:one').finding)).toEqual([signOffs[0]?.id])
    expect(overridesUnder(asked(base), readTarget(asked(base), 'level:one').finding)).toEqual([])
  })

  it('that the edition lacks is refused by name', () => {
    expect(() => at(base, 'level:gone')).toThrow(/"level:gone" is not a level or board move of this edition/)
  })
})

describe('what stands against a target', () => {
  it('a stand-down of any kind while it is in force', () => {
    for (const closes of ['water', 'boards', 'new'] as const) {
      const record = with_({ standDowns: [aStandDown(closes, today)] })
      expect(at(record)).toMatchObject({ ready: false, blocks: [{ kind: 'stand-down', closes }] })
      expect(at(record, 'level:one', today - 1).ready).toBe(true)
    }
  })

  it('a pause on what it rests on, or on what that rests on', () => {
    const dives = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 10, {
      decisions: [aDecision('level:one', 'approve', today - 5)],
    })
    const paused = { ...dives, incidents: [anIncident('tread@poolside', today)] }
    expect(at(paused, 'level:two').blocks).toMatchObject([{ kind: 'pause', pair: 'tread@poolside' }])
    const beside = { ...dives, incidents: [anIncident('103C@3m', today)] }
    expect(at(beside, 'level:two').ready).toBe(true)
  })

  it('a lay-off at a place where it asks something', () => {
    const record = holding(['tread@poolside', 'jump@1m', '101C@1m', 'jump@3m', 'line-up@3m'], today - 61, {
      signOffs: [aSignOff('101C@1m', 'two', today - 60)],
    })
    expect(at(record, 'move:forward:3m').blocks).toMatchObject([{ kind: 'lay-off', place: '3m' }])
  })

  it('a return, until there is a new success at what it wants more of', () => {
    const decisions = [aDecision('level:one', 'return', today - 5, { wantsMoreOf: ['tread@poolside'] })]
    const returned = with_({ decisions })
    const then = (...attempts: DiverRecord['attempts']) =>
      at({ ...returned, attempts: [...base.attempts, ...attempts] })
    expect(at(returned).blocks).toEqual([{ kind: 'returned', day: today - 5, wantsMoreOf: ['tread@poolside'] }])
    const poor = divedBut('tread@poolside', today, {}, { observations: [] })
    expect(then(poor).ready).toBe(false)
    expect(then(dived('tread@poolside', today - 6)).ready).toBe(false)
    expect(then(dived('tread@poolside', today - 1, 4, { called: false })).ready).toBe(false)
    expect(then(dived('tread@poolside', today - 1)).ready).toBe(true)
  })

  it('a return that names nothing wants more of what the finding rests on', () => {
    const returned = with_({ decisions: [aDecision('level:one', 'return', today - 5)] })
    expect(at(returned).blocks).toMatchObject([{ kind: 'returned', wantsMoreOf: ['tread@poolside'] }])
  })
})

describe('ready since', () => {
  const since = (record: DiverRecord, day = today) => readySince(coast, record, 'level:one', endOf(day), 'UTC')

  it('is the first day of the unbroken interval', () => {
    expect(since(base)).toBe(today - 10)
    expect(since(base, today - 10)).toBe(today - 10)
    expect(since(base, today - 11)).toBeNull()
  })

  it('begins again after a doubt, a pause, a stand-down or a lapse', () => {
    const short = divedBut('tread@poolside', today - 8, { 'clear-water': 1 })
    const clean = [1, 2, 3].map((minute) => dived('tread@poolside', today - 6, 4, { minute }))
    expect(since(with_({ attempts: [...base.attempts, short, ...clean] }))).toBe(today - 6)
    const standDowns = [aStandDown('new', today - 7, { until: today - 4 })]
    expect(since(with_({ standDowns }))).toBe(today - 3)
    const incidents = [anIncident('tread@poolside', today - 7, { clearedAt: noonOf(today - 2) })]
    expect(since(with_({ incidents }))).toBe(today - 2)
    const late = dived('tread@poolside', today + 171)
    const renewed = with_({
      attempts: [...base.attempts, late],
      signOffs: [...base.signOffs, aSignOff('tread@poolside', 'one', today + 175, { by: 'recheck' })],
    })
    expect(since(renewed, today + 180)).toBe(today + 175)
  })

  it('agrees with asking on every day', () => {
    const record = holding(['tread@poolside'], today - 40, {
      attempts: [
        divedBut('tread@poolside', today - 30, { 'clear-water': 2 }, { receivedAt: noonOf(today - 28) }),
        ...[1, 2, 3].map((minute) => dived('tread@poolside', today - 20, 4, { minute })),
      ],
      standDowns: [aStandDown('boards', today - 12, { until: today - 11 })],
    })
    for (let day = today - 45; day <= today + 200; day++) {
      let first = day
      while (at(record, 'level:one', first - 1).ready) first--
      expect(since(record, day)).toBe(at(record, 'level:one', day).ready ? first : null)
    }
  })
})
