import { describe, expect, it } from 'vitest'
import { bestCertainty } from './certainty'

describe('the certainty that a faultless series shows', () => {
  // By hand from Beta(n + 1, 1): P(p ≥ r) = 1 − r^(n + 1).
  it.each([
    [0.7, 4, 0.83193],
    [0.5, 3, 0.9375],
    [0.6, 10, 0.99637],
  ])('rate %f over %i attempts', (rate, over, expected) => {
    expect(bestCertainty(rate, over)).toBeCloseTo(expected, 5)
  })
})
