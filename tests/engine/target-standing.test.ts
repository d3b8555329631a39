import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readySince } from '@/lib/assessment/readiness/ready-since'
import { standingRow } from '@/lib/assessment/readiness/standing-row'
import { datesOf, nextStandingChange, standingOf } from '@/lib/assessment/readiness/target-standing'
import { listTargets } from '@/lib/assessment/readiness/targets'
import { readWaitsFor, waitsFor, writeWaitsFor } from '@/lib/assessment/readiness/waits-for'
import type { DiverRecord, TargetKey } from '@/lib/assessment/record'
import type { EpochDay } from '@/lib/assessment/time'
import { aDecision, aRecord, aStandDown, endOf } from '@/tests/support/record'
import { historyOver } from '../support/histories'
import { coast, dived, divedBut, holding, today } from '../support/small-coast'

const stands = (record: DiverRecord, target: TargetKey, day: EpochDay = today) =>
  standingOf(datesOf(coast, record, endOf(day), 'UTC'), target)

describe('how a diver stands', () => {
  it('is ready when all that is asked is met, near within three good attempts, on the way with a new skill to learn', () => {
    expect(stands(holding(['tread@poolside'], today), 'level:one').standing).toBe('ready')
    expect(stands(holding([], today), 'level:one').standing).toBe('on the way')
    const begun = holding(['tread@poolside'], today)
    expect(stands({ ...begun, signOffs: [] }, 'level:one').standing).toBe('near')
  })

  it('is held up when she trained for sixty days and nothing that binds got better', () => {
    const decisions = [aDecision('level:two', 'approve', today - 70)]
    const old = { ...holding(['tread@poolside'], today - 70), decisions }
    const jumps = holding(['tread@poolside'], today - 5).attempts
    const record = { ...old, attempts: [...old.attempts, ...jumps] }
    expect(stands(record, 'level:three').standing).toBe('held up')
    expect(stands(old, 'level:three').standing).toBe('on the way')
  })

  it('is on the way to a level above the next one, and nobody counts how far', () => {
    expect(stands(holding([], today), 'level:two')).toMatchObject({ standing: 'on the way', left: null })
    const held = { ...holding([], today), decisions: [aDecision('level:one', 'approve', today)] }
    expect(stands(held, 'level:two').left).not.toBeNull()
  })

  it('is counted apart while she is stood down', () => {
    const record = holding(['tread@poolside'], today, { standDowns: [aStandDown('water', today)] })
    expect(stands(record, 'level:one').standing).toBe('stood down')
  })
})

describe('the next day on which a standing can change', () => {
  it('is when a window ends, or none', () => {
    expect(nextStandingChange(coast, holding(['tread@poolside'], today - 10), endOf(today), 'UTC')).toBe(today + 49)
    expect(nextStandingChange(coast, aRecord(), endOf(today), 'UTC')).toBeNull()
  })

  // What a row of readiness says of each target, ready since apart.
  const said = (record: DiverRecord, day: EpochDay): string => {
    const dates = datesOf(coast, record, endOf(day), 'UTC')
    const rows = listTargets(coast).map((target) => standingRow(dates, target))
    return JSON.stringify(rows)
  }
  /** The days from `today` on, up to `days` later, on which the calendar alone changed what is said. */
  const changes = (record: DiverRecord, days: number): EpochDay[] => {
    const all = Array.from({ length: days + 1 }, (_, ahead) => said(record, today + ahead))
    return all.flatMap((row, ahead) => (ahead > 0 && row !== all[ahead - 1] ? [today + ahead] : []))
  }

  it('counts the days over which a standard wants its successes, and sixty days without progress', () => {
    // Two days are asked: a further dive today would share the first one's.
    const once = aRecord({ attempts: [dived('101C@1m', today)] })
    expect(changes(once, 2)).toContain(today + 1)
    expect(nextStandingChange(coast, once, endOf(today), 'UTC')).toBe(today + 1)
    const idle = aRecord({
      attempts: [dived('jump@1m', today - 30), dived('jump@1m', today + 29, 4, { receivedAt: 0 })],
    })
    expect(changes(idle, 40)).toContain(today + 30)
  })

  it('comes before any change that the calendar alone brings, whatever the history', () => {
    fc.assert(
      fc.property(historyOver(coast, 14), (record) => {
        for (const day of changes(record, 100))
          expect(nextStandingChange(coast, record, endOf(day - 1), 'UTC')).toBe(day)
      }),
      { seed: 20260314, numRuns: 8, endOnFailure: true },
    )
  })

  it('lets ready since be carried on from what was known', () => {
    fc.assert(
      fc.property(historyOver(coast, 14), fc.nat(200), (record, later) => {
        for (const target of listTargets(coast)) {
          const since = (day: EpochDay, known: Parameters<typeof readySince>[5] = null) =>
            readySince(coast, record, target, endOf(day), 'UTC', known)
          const first = since(today)
          const known = first === null ? null : { since: first, on: today }
          expect(since(today + later, known)).toBe(since(today + later))
        }
      }),
      { seed: 20260314, numRuns: 60 },
    )
  })
})

describe('what a target waits for', () => {
  const codes = (record: DiverRecord, target: TargetKey) => waitsFor(stands(record, target).found).map(writeWaitsFor)

  it('names the pair, the criterion that fell short, the decision, the venue, the block', () => {
    expect(codes(aRecord(), 'level:one')).toEqual(['pair tread@poolside'])
    const short = divedBut('tread@poolside', today, { 'clear-water': 1 })
    expect(codes(aRecord({ attempts: [short] }), 'level:one')).toEqual(['shortfall tread@poolside clear-water'])
    const held = holding(['tread@poolside'], today - 5)
    expect(codes({ ...held, attempts: [...held.attempts, short] }, 'level:one')).toEqual([
      'shortfall tread@poolside clear-water',
    ])
    expect(codes(held, 'level:two')[0]).toBe('decision level:one')
    const nowhere = aRecord({ venue: [{ feature: 'board-3m', has: false, receivedAt: 0 }] })
    expect(codes(nowhere, 'move:forward:3m')).toContain('venue board-3m')
    const returned = { ...held, decisions: [aDecision('level:one', 'return', today)] }
    expect(codes(returned, 'level:one')).toEqual(['block returned'])
  })

  it('can be read back from its code, whatever the history', () => {
    fc.assert(
      fc.property(historyOver(coast, 14), fc.constantFrom(...listTargets(coast)), (record, target) => {
        const found = waitsFor(stands(record, target).found)
        expect(found.map((one) => readWaitsFor(writeWaitsFor(one)))).toEqual(found)
      }),
      { seed: 20260314, numRuns: 100 },
    )
    expect(() => readWaitsFor('weather')).toThrow(RangeError)
  })
})
