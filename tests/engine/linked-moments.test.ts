import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asOf } from '@/lib/assessment/as-of'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { changeDays, readySince } from '@/lib/assessment/readiness/ready-since'
import type { AttemptFact, DiverRecord } from '@/lib/assessment/record'
import { standardAt } from '@/lib/assessment/standard'
import { dayIn } from '@/lib/assessment/time'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { aRecord, endOf, noonOf } from '@/tests/support/record'
import { lawRuns } from '../support/effort'
import { historyOver } from '../support/histories'
import { coast, divedBut, holding, pairIn, shown, today } from '../support/small-coast'

// What a clip that is linked after the rating does to a standard that asks for video, and what it leaves alone.
const plain = pairIn(coast, '101C@1m')
const pair: Pair = { ...plain, standard: { ...plain.standard, moments: 1 } }
const date = endOf(today)

const linked = (attempt: AttemptFact, at: number): AttemptFact => ({
  ...attempt,
  observations: attempt.observations.map((view) => ({ ...view, linkedAt: at })),
})
const missing = (attempts: readonly AttemptFact[], instant = date.instant): number => {
  const then = { day: date.day, instant }
  return standardAt(pair, asOf(aRecord({ attempts }), then).attempts, 0, then).shortage.moments
}

describe('a clip that is linked later', () => {
  const [first, second] = shown(plain.key, today) as [AttemptFact, AttemptFact]

  it('counts as a moment of a success from the time of linking, and not before', () => {
    const at = noonOf(today, 60)
    expect(missing([first, second])).toBe(1)
    expect(missing([linked(first, at), second])).toBe(0)
    expect(missing([linked(first, at), second], at - 1)).toBe(1)
  })

  it('does not count where the attempt failed, or where its coach was beyond what she may judge', () => {
    const failed = divedBut(plain.key, today, { 'hands-locked': 0 })
    expect(missing([first, second, linked(failed, date.instant)])).toBe(1)
    const beyond = { ...first, observations: first.observations.map((view) => ({ ...view, withinScope: false })) }
    expect(missing([linked(beyond, date.instant), second])).toBe(1)
  })

  it('is a day on which something can change, so that "ready since" begins with it', () => {
    const attempts = shown('101C@1m', today - 3).map((one, index) => (index === 0 ? linked(one, noonOf(today)) : one))
    const days = changeDays(coast, aRecord({ attempts }), 'UTC')
    expect(days).toContain(dayIn(noonOf(today), 'UTC'))
    expect(readySince(coast, aRecord({ attempts }), 'level:one', date, 'UTC')).toBeNull()
  })

  it('puts no sign-off in doubt and changes no holding, whenever it comes', () => {
    const statesOf = (record: DiverRecord) => {
      const evaluation = evaluationOf(coast, record, date)
      return [...coast.pairs.keys()].map((key) => [key, evaluation.holdings.of(key).state])
    }
    const held = holding(['tread@poolside', '101C@1m'], today - 20)
    const after = { ...held, attempts: held.attempts.map((one) => linked(one, noonOf(today))) }
    expect(statesOf(after)).toEqual(statesOf(held))
    // No standard of the small edition asks for video: then a link changes nothing at all.
    fc.assert(
      fc.property(historyOver(coast), fc.nat(200), (record, ago) => {
        const at = noonOf(today - ago)
        const filmed = { ...record, attempts: record.attempts.map((one) => linked(one, at)) }
        expect(statesOf(filmed)).toEqual(statesOf(record))
      }),
      { seed: 230_001, numRuns: lawRuns.each },
    )
  })
})
