import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { standardAt } from '@/lib/assessment/standard'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { Standard } from '@/lib/curriculum/model'
import { anAttempt, endOf } from '@/tests/support/record'
import { tinyEdition, tinyStandard } from '@/tests/support/tiny-edition'

// Values computed independently in R 4.2.2 (binomial, Beta and absorbing-chain arithmetic); see the file's `convention`.
interface Characteristics {
  readonly k: number
  readonly n: number
  readonly p: readonly number[]
  readonly single_look_first_n: readonly number[]
  readonly rolling_pass_by_attempt: { readonly attempt: readonly number[]; readonly prob: readonly number[][] }
  readonly expected_attempts_to_pass: readonly number[]
}
interface Posterior {
  readonly prior: 'uniform' | 'jeffreys'
  readonly x: number
  readonly n: number
  readonly 'p_gt_0.6': number
  readonly 'p_gt_0.7': number
  readonly 'p_gt_0.8': number
}
const vectors: {
  readonly operating_characteristics: readonly Characteristics[]
  readonly betabinomial: readonly Posterior[]
} = JSON.parse(readFileSync(new URL('../fixtures/standards/pass-rules/pass-rules.json', import.meta.url), 'utf8'))

const today = endOf(20_500)
const sound = { 'feet-together': 4, 'board-pushed': 4, upright: 4 } as const
/** Falls short where it is not critical, so that nothing but the count decides. */
const poor = { ...sound, 'board-pushed': 0 } as const

function pairWith(standard: Partial<Standard>): Pair {
  const one = { ...tinyStandard, coaches: 1, days: 1, moments: 0, certainty: null, ...standard }
  const edition = tinyEdition({ standard: one })
  const skills = edition.skills.map((skill) => ({
    ...skill,
    places: skill.places.map((at) => ({ ...at, standard: {} })),
  }))
  const pair = indexEdition({ ...edition, skills }, '0'.repeat(64)).pairs.get('jump@1m')
  if (!pair) throw new Error('the small edition has lost its jump')
  return pair
}

const standardAfter = (pair: Pair, outcomes: readonly boolean[]) =>
  standardAt(
    pair,
    outcomes.map((good, index) => anAttempt(pair.key, today.day, { minute: index, rated: good ? sound : poor })),
    0,
    today,
  )

/** Whether the engine's standard holds after each history of up to `n` attempts, as a string of 0 and 1. */
function passing(pair: Pair, n: number): Map<string, boolean> {
  const passes = new Map<string, boolean>()
  const add = (history: string) => {
    passes.set(
      history,
      standardAfter(
        pair,
        [...history].map((mark) => mark === '1'),
      ).holds,
    )
    if (history.length < n) for (const mark of '01') add(history + mark)
  }
  add('')
  return passes
}

/** A history as a number: its marks in binary behind a leading 1, so that "01" and "1" differ. */
const codeOf = (history: string): number => Number.parseInt(`1${history}`, 2)

/** P(not passed by attempt t), t = 0, 1, …, until it is negligible: the rolling rule as an absorbing chain. */
function survival(passes: Map<string, boolean>, n: number, p: number): number[] {
  const full = 2 ** n
  const passed = new Uint8Array(2 * full)
  for (const [history, pass] of passes) passed[codeOf(history)] = Number(pass)
  let waiting = new Float64Array(2 * full)
  waiting[codeOf('')] = 1
  const left: number[] = []
  for (let alive = 1; alive > 1e-13; ) {
    left.push(alive)
    const next = new Float64Array(2 * full)
    alive = 0
    waiting.forEach((chance, code) => {
      if (chance === 0) return
      for (const mark of [0, 1]) {
        const longer = 2 * code + mark
        const last = longer < 2 * full ? longer : full + (longer % full)
        if (passed[last]) continue
        const share = chance * (mark === 1 ? p : 1 - p)
        next[last] = (next[last] ?? 0) + share
        alive += share
      }
    })
    waiting = next
  }
  return left
}

describe.each(vectors.operating_characteristics)('$k of the last $n, through the standard of a pair', (expected) => {
  const { k, n, p } = expected
  const pair = pairWith({ successes: k, of: n })
  const passes = passing(pair, n)

  it('passes a single look as often as the binomial says', () => {
    const full = [...passes].filter(([history]) => history.length === n)
    p.forEach((rate, index) => {
      const chance = full
        .filter(([, pass]) => pass)
        .map(([history]) => [...history].reduce((product, mark) => product * (mark === '1' ? rate : 1 - rate), 1))
        .reduce((sum, one) => sum + one, 0)
      expect(chance).toBeCloseTo(expected.single_look_first_n[index] ?? Number.NaN, 9)
    })
  })

  it('passes the rolling rule by an attempt, and in so many attempts, as the chain says', { timeout: 60_000 }, () => {
    p.forEach((rate, index) => {
      const left = survival(passes, n, rate)
      expected.rolling_pass_by_attempt.attempt.forEach((attempt, column) => {
        const by = expected.rolling_pass_by_attempt.prob[index]?.[column] ?? Number.NaN
        expect(1 - (left[attempt] ?? 0)).toBeCloseTo(by, 9)
      })
      const wanted = expected.expected_attempts_to_pass[index] ?? Number.NaN
      const attempts = left.reduce((sum, alive) => sum + alive, 0)
      expect(Math.abs(attempts / wanted - 1)).toBeLessThan(1e-8)
    })
  })

  it('looks at no more than the last attempts', () => {
    for (const [history, pass] of [...passes].filter(([history]) => history.length === n).slice(0, 64))
      for (const before of [true, false])
        expect(standardAfter(pair, [before, before, ...[...history].map((mark) => mark === '1')]).holds).toBe(pass)
  })
})

describe('certainty, through the standard of a pair', () => {
  const uniform = vectors.betabinomial.filter(({ prior }) => prior === 'uniform')

  it.each(uniform)('$x of $n: the posterior of a uniform prior', (expected) => {
    for (const rate of [0.6, 0.7, 0.8] as const) {
      const pair = pairWith({ certainty: { rate, at: 1, over: expected.n } })
      const outcomes = Array.from({ length: expected.n }, (_, index) => index < expected.x)
      expect(standardAfter(pair, outcomes).shortage.certainty).toBeCloseTo(expected[`p_gt_${rate}`], 6)
    }
  })

  it('looks at no more than the last attempts that it is asked over', () => {
    const pair = pairWith({ certainty: { rate: 0.7, at: 1, over: 5 } })
    const outcomes = [false, false, false, true, true, true, true, true]
    expect(standardAfter(pair, outcomes).shortage.certainty).toBeCloseTo(1 - 0.7 ** 6, 9)
  })

  it('holds at the probability asked, and not above it', () => {
    const outcomes = [true, true, true, true, true]
    // 1 − 0.7⁶ = 0.882351 (the same file).
    expect(standardAfter(pairWith({ certainty: { rate: 0.7, at: 0.88, over: 5 } }), outcomes).holds).toBe(true)
    expect(standardAfter(pairWith({ certainty: { rate: 0.7, at: 0.89, over: 5 } }), outcomes).holds).toBe(false)
  })
})
