import { describe, expect, it } from 'vitest'
import { copied, dayOf, findEarlier, findPlan, newPlan, withHere, withPlan, withWatch } from './plan'

const [mira, ada, bo] = ['mira', 'ada', 'bo']
const plan = newPlan('juniors', '2026-03-07', [mira, ada])

describe('a plan of the day', () => {
  it('begins with everybody here and nothing chosen', () => {
    expect(plan).toEqual({ squad: 'juniors', day: '2026-03-07', here: [mira, ada], watch: {} })
  })

  it('ticks who is here, once', () => {
    const without = withHere(plan, ada, false)
    expect(without.here).toEqual([mira])
    expect(withHere(withHere(without, ada, true), ada, true).here).toEqual([mira, ada])
  })

  it('chooses a skill for one, or for all, and takes it back', () => {
    const all = withWatch(withWatch(plan, [mira], '101C@1m', true), [mira, ada], '201C@1m', true)
    expect(all.watch).toEqual({ mira: ['101C@1m', '201C@1m'], ada: ['201C@1m'] })
    expect(withWatch(all, [mira], '101C@1m', false).watch).toEqual({ mira: ['201C@1m'], ada: ['201C@1m'] })
    expect(withWatch(all, [ada], '201C@1m', true).watch.ada).toEqual(['201C@1m'])
  })

  it('is copied without those who left the squad, and who is here is ticked anew', () => {
    const earlier = withHere(withWatch(plan, [mira, ada], '101C@1m', true), mira, false)
    expect(copied(earlier, '2026-03-09', [mira, bo])).toEqual({
      squad: 'juniors',
      day: '2026-03-09',
      here: [mira, bo],
      watch: { mira: ['101C@1m'] },
    })
  })

  it('stands in the place of the same day’s; the newest earlier one is found', () => {
    const days = ['2026-03-02', '2026-03-05', '2026-03-07'].map((day) => newPlan('juniors', day, [mira]))
    const plans = [...days, newPlan('seniors', '2026-03-06', [])].reduce(withPlan, [] as readonly (typeof plan)[])
    const changed = withPlan(plans, withHere(newPlan('juniors', '2026-03-07', [mira]), mira, false))
    expect(changed).toHaveLength(4)
    expect(findPlan(changed, 'juniors', '2026-03-07')?.here).toEqual([])
    expect(findPlan(changed, 'juniors', '2026-03-06')).toBeNull()
    expect(findEarlier(changed, 'juniors', '2026-03-07')?.day).toBe('2026-03-05')
    expect(findEarlier(changed, 'seniors', '2026-03-06')).toBeNull()
  })

  it('forgets the oldest', () => {
    const plans = Array.from({ length: 50 }, (_, at) => newPlan('juniors', `2026-01-${at + 10}`, []))
    const kept = plans.reduce(withPlan, [] as readonly (typeof plan)[])
    expect([kept.length, kept[0]?.day, kept.at(-1)?.day]).toEqual([40, '2026-01-59', '2026-01-20'])
  })

  it('is of the day on this phone', () => {
    // Chatham is 13:45 h before UTC in March.
    expect(dayOf(Date.UTC(2026, 2, 7, 10, 14))).toBe('2026-03-07')
    expect(dayOf(Date.UTC(2026, 2, 7, 10, 15))).toBe('2026-03-08')
  })
})
