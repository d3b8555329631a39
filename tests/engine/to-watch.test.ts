import { describe, expect, it } from 'vitest'
import { toWatch } from '@/lib/assessment/deck/to-watch'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { standingRow } from '@/lib/assessment/readiness/standing-row'
import { datesOf } from '@/lib/assessment/readiness/target-standing'
import { listTargets } from '@/lib/assessment/readiness/targets'
import type { DiverRecord } from '@/lib/assessment/record'
import { aRecord, aStandDown, endOf } from '@/tests/support/record'
import { coast, holding, today } from '../support/small-coast'

function watchOf(record: DiverRecord, level: string) {
  const dates = datesOf(coast, record, endOf(today), 'UTC')
  const rows = listTargets(coast).map((target) => standingRow(dates, target))
  return toWatch(evaluationOf(coast, record, endOf(today)), rows, level, { curriculum: coast, today, diver: 'Mira' })
}

describe('what to watch today', () => {
  it('is what the level waits for, with how far it is', () => {
    const [first] = watchOf(aRecord(), 'one')
    expect(first?.pair).toBe('tread@poolside')
    expect(first?.why).toMatch(/^\S.* is (at most )?\w+ good attempts? away\.$/)
  })

  it('is nothing of what is met, and nothing of what is closed', () => {
    expect(watchOf(holding(['tread@poolside'], today), 'one')).toEqual([])
    const standDowns = [aStandDown('water', today)]
    expect(watchOf(holding([], today, { standDowns }), 'one')).toEqual([])
  })

  it('puts before it what was signed and has to be shown again', () => {
    const old = holding(['tread@poolside'], today - 400)
    expect(watchOf(old, 'one')[0]).toEqual({ pair: 'tread@poolside', why: 'Its sign-off has lapsed.' })
  })
})
