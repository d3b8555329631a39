import type { LintProblem, Rule } from '../problem'
import { listStandards, writes } from './standards'

/**
 * The highest P(true rate ≥ rate) that `over` attempts can show: all succeeded, uniform prior, so the posterior is
 * Beta(over + 1, 1) and the probability 1 − rate^(over + 1).
 */
export const bestCertainty = (rate: number, over: number): number => 1 - rate ** (over + 1)

/** Standards whose certainty not even a faultless series attains. */
export const certainty: Rule = (subject) =>
  listStandards(subject).flatMap((place): LintProblem[] => {
    const { certainty: asked } = place.standard
    if (!asked || !writes(place, 'certainty') || bestCertainty(asked.rate, asked.over) >= asked.at) return []
    const best = (Math.floor(bestCertainty(asked.rate, asked.over) * 1000) / 1000).toFixed(3)
    const message = `the standard of ${place.owner} wants P(rate ≥ ${asked.rate}) ≥ ${asked.at}, but ${asked.over} faultless attempts give ${best}; look over more attempts or ask for less`
    return [{ code: 'certainty-out-of-reach', path: `${place.path}/certainty`, message }]
  })
