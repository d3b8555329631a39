import { describe, expect, it } from 'vitest'
import { sayStandard } from '@/lib/assessment/readiness/say-standard'
import { tinyStandard } from '@/tests/support/tiny-edition'

const standard = { ...tinyStandard, slack: 1 }

describe('a standard in words', () => {
  it('says the successes, what a success is, what undoes it and how long it lasts', () => {
    expect(sayStandard({ ...standard, moments: 1 })).toEqual([
      'Two of the last three called attempts succeed within 60 days, seen by two coaches, on two days and one of them with a video moment.',
      'A success: the ratings may fall short of what the level asks by one point in all, one on a criterion, and never on a critical one.',
      'No critical criterion fell short in the last three attempts in which it was rated.',
      'It lasts 180 days from the latest success; within 90 days of the lapse one of the last two renews it.',
    ])
  })
  it('leaves out what is not asked', () => {
    const [first, success] = sayStandard({ ...standard, successes: 1, of: 2, coaches: 1, days: 1, slack: 0 })
    expect(first).toBe('One of the last two called attempts succeeds within 60 days.')
    expect(success).toBe('A success: every criterion reaches what the level asks.')
  })
  it('says how sure it must be, where that is asked', () => {
    expect(sayStandard({ ...standard, certainty: { rate: 0.6, at: 0.8, over: 10 } })).toContain(
      'Over the last ten called attempts it is 80 % sure that at least 60 % succeed.',
    )
  })
})
