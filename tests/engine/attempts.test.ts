import { describe, expect, it } from 'vitest'
import { seeAttempt } from '@/lib/assessment/attempt'
import { historyOf } from '@/lib/assessment/history'
import { phaseView } from '@/lib/assessment/phase-view'
import type { ObservationFact } from '@/lib/assessment/record'
import { standardAt } from '@/lib/assessment/standard'
import { standingShortfalls } from '@/lib/assessment/standing'
import { verdictAt } from '@/lib/assessment/verdict'
import { allRated, anAttempt, anObservation, endOf, noonOf } from '@/tests/support/record'
import { coast, dived, divedBut, pairIn, today } from '../support/small-coast'

// 101C at 1 m asks: hands-locked 3 and safe-distance 3 (critical), board-pushed 2 then 3 from level three,
// upright 2 then 3 from level two. Four criteria: slack 1.
const pair = pairIn(coast, '101C@1m')
const date = endOf(today)
const sound = allRated(pair, 4)
const seen = (observations: readonly ObservationFact[]) =>
  seeAttempt(pair, anAttempt(pair.key, today, { observations }), date)
const verdicts = (rated: Record<string, number>) => {
  const attempt = seeAttempt(pair, divedBut(pair.key, today, rated as never), date)
  return [0, 1, 2].map((level) => verdictAt(pair, attempt, level))
}

describe('the verdict of an attempt at a level', () => {
  it('is a success when nothing falls short, or no more than the slack', () => {
    expect(verdicts({})).toEqual(['success', 'success', 'success'])
    expect(verdicts({ upright: 2 })).toEqual(['success', 'success', 'success'])
    expect(verdicts({ upright: 2, 'board-pushed': 2 })).toEqual(['success', 'success', 'failure'])
  })

  it('is a failure by one shortfall of two points, or any critical one', () => {
    expect(verdicts({ upright: 0 })).toEqual(['failure', 'failure', 'failure'])
    expect(verdicts({ upright: 1 })).toEqual(['success', 'failure', 'failure'])
    expect(verdicts({ 'hands-locked': 2 })).toEqual(['failure', 'failure', 'failure'])
  })

  it('is incomplete while something asked is unknown, and a failure at once when what is known cannot succeed', () => {
    const { upright, ...rest } = sound
    const partly = seen([anObservation({ ratings: rest })])
    const short = seen([anObservation({ ratings: { ...rest, 'safe-distance': 1 } })])
    expect(upright).toBe(4)
    expect(verdictAt(pair, partly, 0)).toBe('incomplete')
    expect(verdictAt(pair, short, 0)).toBe('failure')
  })

  it('takes an imputed lower bound for known where it reaches what is expected, and never for a critical criterion', () => {
    const critical = { 'hands-locked': 3, 'safe-distance': 3 } as const
    const imputed = seen([anObservation({ ratings: critical, imputed: { upright: 2, 'board-pushed': 2 } })])
    expect([0, 1, 2].map((level) => verdictAt(pair, imputed, level))).toEqual(['success', 'incomplete', 'incomplete'])
    const hidden = seen([anObservation({ ratings: { upright: 4, 'board-pushed': 4 }, imputed: critical })])
    expect(verdictAt(pair, hidden, 0)).toBe('incomplete')
  })
})

describe('several views of one attempt', () => {
  const by = (coach: string, changes: Partial<ObservationFact>) => anObservation({ id: coach, coach, ...changes })

  it('combine to the lowest of a critical criterion and the lower median of another', () => {
    const views = [4, 3, 1, 2].map((rating, index) =>
      by(`c${index}`, { ratings: { upright: rating as 4, 'hands-locked': rating as 4 } }),
    )
    const combined = seen(views)
    expect(combined.explicit.get('upright')).toBe(2)
    expect(combined.explicit.get('hands-locked')).toBe(1)
  })

  it('put explicit ratings before imputed ones, and take the highest of several imputed', () => {
    const explicit = seen([by('a', { ratings: { upright: 1 } }), by('b', { imputed: { upright: 3 } })])
    expect([explicit.explicit.get('upright'), explicit.imputed.get('upright')]).toEqual([1, undefined])
    const imputed = seen([by('a', { imputed: { upright: 2 } }), by('b', { imputed: { upright: 3 } })])
    expect(imputed.imputed.get('upright')).toBe(3)
  })

  it('beyond scope never help, and their critical shortfalls count', () => {
    const only = seen([by('a', { ratings: sound, withinScope: false })])
    expect([only.counts, only.earns, only.explicit.size]).toEqual([false, false, 0])
    const low = by('b', { ratings: { ...sound, 'hands-locked': 1, upright: 0 }, withinScope: false })
    const both = seen([by('a', { ratings: sound }), low])
    expect(both.explicit.get('upright')).toBe(4)
    expect(both.explicit.get('hands-locked')).toBe(1)
    expect(verdictAt(pair, both, 0)).toBe('failure')
    expect(both.coaches).toEqual(['a'])
  })

  it('that raise a critical rating count when accepted; a lower one, or another criterion, at once', () => {
    const first = by('a', { ratings: { ...sound, 'hands-locked': 1, upright: 1 } })
    const next = (changes: Partial<ObservationFact>) =>
      seen([first, by('a2', { coach: 'a', supersedes: 'a', ratings: sound, ...changes })])
    expect(next({}).explicit.get('hands-locked')).toBe(1)
    expect(next({}).explicit.get('upright')).toBe(4)
    expect(next({ ratings: { ...sound, 'hands-locked': 2 } }).explicit.get('hands-locked')).toBe(1)
    expect(next({ raiseAcceptedAt: 1 }).explicit.get('hands-locked')).toBe(4)
    expect(next({ ratings: { ...sound, 'hands-locked': 0 } }).explicit.get('hands-locked')).toBe(0)
  })

  it('cannot take a dangerous rating back, nor raise it through a chain of corrections', () => {
    const { 'hands-locked': _, ...silent } = sound
    const first = by('a', { ratings: { ...sound, 'hands-locked': 1 } })
    const taken = by('a2', { coach: 'a', supersedes: 'a', ratings: silent })
    expect(verdictAt(pair, seen([first, taken]), 0)).toBe('failure')
    const again = by('a3', { coach: 'a', supersedes: 'a2', ratings: sound })
    expect(verdictAt(pair, seen([first, taken, again]), 0)).toBe('failure')
    expect(verdictAt(pair, seen([first, taken, { ...again, raiseAcceptedAt: 1 }]), 0)).toBe('success')
  })
})

describe('a standing shortfall', () => {
  const short = divedBut(pair.key, today, { 'hands-locked': 2 })
  const standing = (...after: Parameters<typeof historyOf>[1][number][]) =>
    standingShortfalls(historyOf(pair, [short, ...after], date), 0).length > 0
  const clean = (minute: number, changes: Parameters<typeof anAttempt>[2] = {}) =>
    dived(pair.key, today, 4, { minute, ...changes })

  it('stands until the criterion was rated as often as `clean` asks, called or not', () => {
    expect(standing(clean(1), clean(2))).toBe(true)
    expect(standing(clean(1), clean(2, { called: false }), clean(3))).toBe(false)
  })

  it('is not pushed out by attempts that did not rate it', () => {
    const unrated = [1, 2, 3, 4].map((minute) => anAttempt(pair.key, today, { minute, rated: { upright: 4 } }))
    expect(standing(...unrated)).toBe(true)
  })

  it('is not pushed out by attempts that may not count: closed, beyond scope, of a day to come', () => {
    const beyond = [anObservation({ ratings: sound, withinScope: false })]
    expect(standing(...[1, 2, 3].map((minute) => clean(minute, { closedThen: true })))).toBe(true)
    expect(standing(...[1, 2, 3].map((minute) => clean(minute, { observations: beyond })))).toBe(true)
    const ahead = [1, 2, 3].map((minute) =>
      dived(pair.key, today + 9, 4, { minute, receivedAt: noonOf(today, minute) }),
    )
    expect(standing(...ahead)).toBe(true)
    expect(standing(...[1, 2, 3].map((minute) => clean(minute, { closedThen: true, releasedAt: 1 })))).toBe(false)
  })

  it('comes from any attempt whoever saw it, even from one whose date has not come', () => {
    const ahead = divedBut(pair.key, today + 300, { 'hands-locked': 0 }, { receivedAt: noonOf(today) })
    const history = historyOf(pair, [ahead], date)
    expect(standingShortfalls(history, 0)).toMatchObject([{ criterion: 'hands-locked', rating: 0, expected: 3 }])
    // It was dived before it was received, whatever its phone says: later dives can answer it.
    const answered = historyOf(pair, [ahead, clean(1), clean(2), clean(3)], date)
    expect(standingShortfalls(answered, 0)).toEqual([])
  })
})

describe('the standard', () => {
  const good = (day: number, coach: string, changes: Parameters<typeof anAttempt>[2] = {}) =>
    dived(pair.key, day, 4, { coach, ...changes })
  const on = (...attempts: Parameters<typeof standardAt>[1]) => standardAt(pair, attempts, 0, date)

  it('holds with its successes, coaches and days, and cites them', () => {
    const found = on(good(today - 1, 'ann'), good(today, 'ben'))
    expect(found.holds).toBe(true)
    expect(found.successes).toHaveLength(2)
  })

  it('counts coaches and days over the whole window, not only among the last attempts', () => {
    const last = [1, 2, 3].map((minute) => good(today, 'ann', { minute }))
    expect(on(...last).shortage).toMatchObject({ successes: 0, coaches: 1, days: 1 })
    expect(on(good(today - 59, 'ben'), ...last).holds).toBe(true)
    expect(on(good(today - 60, 'ben'), ...last).shortage).toMatchObject({ coaches: 1, days: 1 })
  })

  it('is not fed by uncalled, closed or future attempts', () => {
    for (const changes of [{ called: false }, { closedThen: true }, { day: today + 1 }])
      expect(on(good(today - 1, 'ann'), good(today, 'ben', changes)).shortage.successes).toBe(1)
  })

  it('takes incomplete attempts for neither: they fail nothing and push nothing out', () => {
    const partly = [1, 2, 3].map((minute) => anAttempt(pair.key, today, { minute, rated: { 'hands-locked': 4 } }))
    const found = on(good(today - 1, 'ann'), ...partly, good(today, 'ben', { minute: 9 }))
    expect(found).toMatchObject({ holds: true, failures: 0 })
    expect(found.counted).toHaveLength(2)
  })

  it('counts a second coach on the same attempt as a second coach and not as a second attempt', () => {
    const views = ['ann', 'ben'].map((coach) => anObservation({ id: coach, coach, ratings: sound }))
    const found = on(good(today, '', { observations: views }))
    expect(found.shortage).toMatchObject({ successes: 1, coaches: 0 })
  })

  it('may be waived down to two successes, and never where a shortfall stands', () => {
    const strict = { ...pair, standard: { ...pair.standard, successes: 4, of: 5, moments: 1 } }
    const two = [good(today, 'ann'), good(today, 'ann', { minute: 1 })]
    const all = { coaches: true, days: true, moments: true, certainty: true, count: 1 } as const
    expect(standardAt(strict, two, 0, date).shortage).toMatchObject({ successes: 2, coaches: 1, days: 1, moments: 1 })
    expect(standardAt(strict, two, 0, date, all).holds).toBe(true)
    expect(standardAt(strict, two.slice(1), 0, date, all).shortage.successes).toBe(1)
    const short = divedBut(pair.key, today - 1, { 'hands-locked': 2 })
    expect(standardAt(strict, [short, ...two], 0, date, all).holds).toBe(false)
  })
})

describe('the phase view', () => {
  const attempt = (rated: Record<string, number>, minute = 0) =>
    seeAttempt(pair, divedBut(pair.key, today, rated as never, { minute }), date)
  const view = (...attempts: Parameters<typeof phaseView>[1]) =>
    Object.fromEntries(phaseView(pair, attempts, 0).map((mark) => [mark.phase, mark]))

  it('shows each phase by the criterion that falls shortest', () => {
    const marks = view(attempt({ upright: 1 }))
    expect(marks['take-off']).toEqual({
      phase: 'take-off',
      criterion: 'upright',
      rating: 1,
      expected: 2,
      how: 'seen',
      critical: false,
    })
    expect(marks.hurdle).toMatchObject({ criterion: null, how: 'not watched' })
  })

  it('says what was imputed', () => {
    const marks = view(seen([anObservation({ imputed: { upright: 2 } })]))
    expect(marks['take-off']).toMatchObject({ rating: 2, how: 'imputed' })
  })

  it('of several attempts takes the lower median, of a critical criterion the lowest of the last `clean`', () => {
    const marks = view(
      attempt({ 'hands-locked': 0, upright: 0 }, 0),
      attempt({ 'hands-locked': 2, upright: 1 }, 1),
      attempt({ upright: 3 }, 2),
      attempt({ upright: 4 }, 3),
    )
    expect(marks.entry).toMatchObject({ criterion: 'hands-locked', rating: 2, critical: true })
    expect(marks['take-off']).toMatchObject({ rating: 1 })
  })
})
