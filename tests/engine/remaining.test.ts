import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { openState } from '@/lib/assessment/open'
import { evaluationOf, imagine } from '@/lib/assessment/readiness/evaluation'
import { goodAttempts, imaginedSignOff } from '@/lib/assessment/readiness/good-attempts'
import { remaining } from '@/lib/assessment/readiness/remaining'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import type { DiverRecord, TargetKey } from '@/lib/assessment/record'
import type { Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { aSignOff, endOf } from '@/tests/support/record'
import { historyOver } from '../support/histories'
import { coast, dived, holding, pairIn, today } from '../support/small-coast'

const date = endOf(today)
const withGoodAttempts = (record: DiverRecord, pair: Pair, count: number): DiverRecord => ({
  ...record,
  attempts: [...record.attempts, ...goodAttempts(pair, count, date)],
})
const left = (record: DiverRecord, target: TargetKey) => remaining(evaluationOf(coast, record, date), target)

/** The record after the good attempts that `remaining` asked for. */
function carriedOut(record: DiverRecord, target: TargetKey): DiverRecord {
  const found = left(record, target)
  if (found.kind === 'never') return record
  return (Object.entries(found.byPair) as [PairKey, number][]).reduce(
    (done, [pair, count]) => withGoodAttempts(done, pairIn(coast, pair), count),
    record,
  )
}

describe('what remains', () => {
  it('counts attempts, signatures and the decision, with what is not held expanded and shared work counted once', () => {
    const nothing = holding([], today)
    // Two attempts and a signature for treading, and the decision on the level.
    expect(left(nothing, 'level:one')).toMatchObject({
      kind: 'count',
      attempts: 2,
      decisions: 2,
      newSkills: ['tread@poolside'],
      exact: true,
    })
    // Level two: two of three skills; the jump and the dive from 1 m rest on treading and the jump.
    expect(left(nothing, 'level:two')).toMatchObject({ attempts: 6, decisions: 5 })
  })

  it('is one decision when all is met, and nothing when it is decided', () => {
    const ready = holding(['tread@poolside'], today)
    expect(left(ready, 'level:one')).toMatchObject({ attempts: 0, decisions: 1 })
  })

  it('waits for an age, and says never when the venue lacks what is asked', () => {
    const young = holding([], today, { born: today - 6 * 365 })
    const move = left(young, 'move:forward:3m')
    expect(move.kind === 'count' && move.notBefore !== null && move.notBefore > today).toBe(true)
    const nowhere = holding([], today, { venue: [{ feature: 'board-3m', has: false, receivedAt: 0 }] })
    const never = left(nowhere, 'move:forward:3m')
    expect(never).toMatchObject({ kind: 'never', because: [{ reason: { code: 'venue lacks it' } }] })
  })

  it('counts what pushes a standing shortfall out', () => {
    const slip = dived('tread@poolside', today, 0)
    const record = {
      ...holding(['tread@poolside'], today - 3),
      attempts: [...holding(['tread@poolside'], today - 3).attempts, slip],
    }
    const found = left(record, 'level:one')
    // Three attempts rated since: the last `clean` of them show it sound.
    expect(found).toMatchObject({ kind: 'count', attempts: 3 })
  })

  it('leaves no attempt wanting once they are dived, on any history', () => {
    fc.assert(
      fc.property(historyOver(coast, 10), fc.constantFrom(...listTargets(coast)), (record, target) => {
        const before = left(record, target)
        if (before.kind === 'never') return
        const after = left(carriedOut(record, target), target)
        expect(after.kind).toBe('count')
        if (after.kind === 'count') expect(after.attempts).toBe(0)
      }),
      { seed: 20260314, numRuns: 40 },
    )
  })

  it('is no attempt and no signature just when the finding is met and nothing blocks it', () => {
    fc.assert(
      fc.property(historyOver(coast, 10), fc.constantFrom(...listTargets(coast)), (record, target) => {
        const found = readTarget(evaluationOf(coast, record, date), target)
        if (found.held !== 'no') return
        const rest = left(record, target)
        const none = rest.kind === 'count' && rest.attempts === 0 && rest.decisions === 1 && rest.notBefore === null
        expect(none).toBe(found.ready)
      }),
      { seed: 20260315, numRuns: 40 },
    )
  })

  it('never grows by a good attempt', () => {
    fc.assert(
      fc.property(
        historyOver(coast, 10),
        fc.constantFrom(...listTargets(coast)),
        fc.constantFrom(...coast.pairs.keys()),
        (record, target, pair) => {
          const before = left(record, target)
          const after = left(withGoodAttempts(record, pairIn(coast, pair), 1), target)
          if (before.kind === 'count') expect(after.kind).toBe('count')
          if (before.kind === 'count' && after.kind === 'count')
            expect(after.attempts).toBeLessThanOrEqual(before.attempts)
        },
      ),
      { seed: 20260316, numRuns: 40 },
    )
  })

  it('asks for a signature where the standard is reached and nobody signed', () => {
    const record = { ...holding(['tread@poolside'], today), signOffs: [] }
    expect(left(record, 'level:one')).toMatchObject({ attempts: 0, decisions: 2 })
    expect(left({ ...record, signOffs: [aSignOff('tread@poolside', 'one', today)] }, 'level:one')).toMatchObject({
      decisions: 1,
    })
  })
})

describe('an imagined record', () => {
  it('is answered as the longer record would be, whatever the history', () => {
    const pairs = fc.constantFrom(...coast.pairs.values())
    fc.assert(
      fc.property(historyOver(coast, 14), pairs, fc.nat(4), fc.boolean(), (record, pair, count, signed) => {
        const attempts = goodAttempts(pair, count, date)
        const signOffs = signed ? [imaginedSignOff(pair.key, pair.at.level, date)] : []
        const longer = {
          ...record,
          attempts: [...record.attempts, ...attempts],
          signOffs: [...record.signOffs, ...signOffs],
        }
        const imagined = imagine(evaluationOf(coast, record, date), { pair: pair.key, attempts, signOffs })
        const afresh = evaluationOf(coast, longer, date)
        expect(imagined.record).toEqual(afresh.record)
        for (const target of listTargets(coast)) {
          expect(readTarget(imagined, target)).toEqual(readTarget(afresh, target))
          expect(remaining(imagined, target)).toEqual(remaining(afresh, target))
        }
        for (const key of coast.pairs.keys()) expect(openState(imagined, key)).toEqual(openState(afresh, key))
      }),
      { seed: 20260314, numRuns: 100, endOnFailure: true },
    )
  })
})
