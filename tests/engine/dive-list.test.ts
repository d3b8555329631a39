import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rank } from '@/lib/assessment/readiness/branch'
import { find } from '@/lib/assessment/readiness/evaluate'
import { type Context, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { remaining, remainingOf } from '@/lib/assessment/readiness/remaining'
import { sayReason } from '@/lib/assessment/readiness/say-reason'
import { sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { readTarget } from '@/lib/assessment/readiness/targets'
import type { DiverRecord } from '@/lib/assessment/record'
import type { Curriculum, PairKey } from '@/lib/curriculum/edition/curriculum'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { allRated, anAttempt, anIncident, aRecognition, aRecord, aSignOff, endOf } from '@/tests/support/record'
import { anEvent, aPart, coastWith } from '../support/dive-events'
import { historyOver } from '../support/histories'
import { curriculumOf, pairIn, today } from '../support/small-coast'

const dives = ['101C', '101B', '201C', '301C', '401C']
const leaf: Requirement = { kind: 'diveList', event: 'trophy' }
// 101C, 201C, 301C and 401C at 1 m are 1.2, 1.5, 1.6 and 1.4.
const event = anEvent('1m', [aPart(2, 2, 28), aPart(1)])
const coast = coastWith(dives, event)
const date = endOf(today)

/** A record in which each dive was dived soundly by two coaches and signed so many days ago. */
function holds(signed: Readonly<Record<string, number>>, changes: Partial<DiverRecord> = {}): DiverRecord {
  const pairs = Object.entries(signed).map(([dive, ago]) => [`${dive}@1m` as PairKey, today - ago] as const)
  const own = aRecord({
    attempts: pairs.flatMap(([key, day]) =>
      ['ann', 'ben'].map((coach, ago) => {
        return anAttempt(key, day - ago, { coach, rated: allRated(pairIn(coast, key), 4) })
      }),
    ),
    signOffs: pairs.map(([key, day]) => aSignOff(key, 'one', day)),
  })
  return { ...own, ...changes, attempts: [...own.attempts, ...(changes.attempts ?? [])] }
}
const at = (record: DiverRecord, context: Context = 'advancement', curriculum: Curriculum = coast) =>
  find(evaluationOf(curriculum, record, date), leaf, context)
const said = (record: DiverRecord) => sayReason(at(record), { curriculum: coast, today })

describe('a dive list', () => {
  it('is met by a legal list from current holdings, and names it', () => {
    const record = holds({ '101C': 5, '201C': 5, '301C': 5 })
    expect(at(record)).toMatchObject({ status: 'met', reason: { code: 'legal list' } })
    expect(said(record)).toBe('A list for Autumn trophy is legal: 101C and 201C (2.7 of at most 2.8); then 301C.')
    expect(at(record).evidence).toContain(`signed 301C@1m one ${today - 5}`)
  })

  it('is lapsed when only a lapsed holding makes it legal, and says which', () => {
    const record = holds({ '101C': 5, '201C': 200, '301C': 5, '401C': 5 })
    expect(at(record).status).toBe('met')
    const without = holds({ '101C': 5, '201C': 200, '301C': 5 })
    expect(at(without)).toMatchObject({ status: 'lapsed', reason: { answer: { renew: ['201C@1m'] } } })
    expect(said(without)).toContain('legal once 201C at 1 m is current again')
    // Past the days of grace nothing renews it.
    expect(at(holds({ '101C': 5, '201C': 300, '301C': 5 }))).toMatchObject({ status: 'unproven' })
  })

  it('is lapsed when a holding that it needs is in doubt', () => {
    const slip = { 'hands-locked': 1, 'safe-distance': 4 } as const
    const record = holds(
      { '101C': 5, '201C': 5, '301C': 5 },
      { attempts: [anAttempt('201C@1m', today - 1, { rated: slip })] },
    )
    expect(at(record)).toMatchObject({ status: 'lapsed', reason: { answer: { renew: ['201C@1m'] } } })
  })

  it('is otherwise unproven, with every reason', () => {
    expect(said(holds({ '101C': 5, '101B': 5 }))).toBe(
      'No list for Autumn trophy is legal yet: one of the three dives asked is held at 1 m; the first part takes dives of two families and one is held.',
    )
    expect(at(holds({}))).toMatchObject({ status: 'unproven' })
    const capped = coastWith(dives, anEvent('1m', [aPart(2, 2, 20)]))
    expect(at(holds({ '101C': 5, '401C': 5 }), 'advancement', capped)).toMatchObject({
      status: 'unproven',
      reason: { answer: { because: [{ kind: 'over the cap', least: 26, cap: 20 }] } },
    })
    const aged = coastWith(dives, { ...event, ageBand: { from: 12, to: 13 } })
    const old = { ...holds({ '101C': 5, '201C': 5, '301C': 5 }), born: today - 20 * 365 }
    expect(at(old, 'advancement', aged)).toMatchObject({
      status: 'unproven',
      reason: { answer: { because: [{ kind: 'outside the band', age: 20 }] } },
    })
    expect(remainingOf(evaluationOf(aged, old, date), leaf, 'advancement').kind).toBe('never')
  })

  it('takes what was recognised only in training, until it was shown here', () => {
    const record = holds(
      { '101C': 5, '201C': 5 },
      { recognitions: [aRecognition({ kind: 'holding', pair: '301C@1m', level: 'one' }, today - 3)] },
    )
    expect(at(record, 'training').status).toBe('met')
    expect(at(record, 'advancement').status).toBe('unproven')
  })

  it('is made without a paused dive where it can be', () => {
    const record = holds(
      { '101C': 5, '201C': 5, '301C': 5, '401C': 5 },
      { incidents: [anIncident('201C@1m', today - 1)] },
    )
    const { reason } = at(record)
    expect(reason.code === 'legal list' && reason.answer.list.map(({ pair }) => pair)).not.toContain('201C@1m')
  })

  it('of an event that the edition does not have is never met', () => {
    const gone = { ...leaf, event: 'gone' }
    expect(find(evaluationOf(coast, holds({ '101C': 5 }), date), gone, 'training')).toMatchObject({
      status: 'unproven',
      reason: { code: 'not in this edition', what: 'gone' },
    })
    expect(sayRequirement(leaf, { curriculum: coast }).sentence).toBe(
      'A list for Autumn trophy is legal with what is held at 1 m.',
    )
  })
})

describe('inside a level', () => {
  const edition = curriculumOf({
    ...coast.document,
    levels: coast.document.levels.map((level) => ({ ...level, requirement: leaf })),
  })
  const asking = (record: DiverRecord) => evaluationOf(edition, record, date)

  it('makes it ready, and a pause on a dive that every list needs stands against it', () => {
    const record = holds({ '101C': 5, '201C': 5, '301C': 5 })
    expect(readTarget(asking(record), 'level:one').ready).toBe(true)
    const paused = { ...record, incidents: [anIncident('301C@1m', today - 1)] }
    expect(readTarget(asking(paused), 'level:one')).toMatchObject({ ready: false, blocks: [{ kind: 'pause' }] })
  })

  it('leaves the attempts for the cheapest list to be shown, as a bound', () => {
    const left = remaining(asking(holds({ '101C': 5, '201C': 5 })), 'level:one')
    expect(left).toMatchObject({ kind: 'count', attempts: 2, decisions: 2, exact: false })
    expect(left.kind === 'count' && Object.keys(left.byPair)).toHaveLength(1)
    const ready = remaining(asking(holds({ '101C': 5, '201C': 5, '301C': 5 })), 'level:one')
    expect(ready).toMatchObject({ kind: 'count', attempts: 0, decisions: 1, exact: true })
  })
})

describe('whatever the history', () => {
  it('one holding more never lowers it, and one fewer never raises it', () => {
    let met = 0
    fc.assert(
      fc.property(
        historyOver(coast, 12),
        fc.subarray([...coast.pairs.keys()]),
        fc.constantFrom(...coast.pairs.keys()),
        fc.constantFrom<Context>('training', 'advancement'),
        (record, held, pair, context) => {
          const signed = {
            ...record,
            signOffs: [...record.signOffs, ...held.map((key) => aSignOff(key, 'one', today))],
          }
          const more = { ...signed, signOffs: [...signed.signOffs, aSignOff(pair, 'one', today, { id: 'one more' })] }
          const [before, after] = [at(signed, context), at(more, context)]
          if (after.status === 'met') met++
          expect(rank(after.status)).toBeGreaterThanOrEqual(rank(before.status))
        },
      ),
      { seed: 20261127, numRuns: 300 },
    )
    expect(met).toBeGreaterThan(30)
  })
})
