import type { AttachedCriterion, Pair } from '../curriculum/edition/curriculum'
import { type Phase, phaseSets, type Rating } from '../curriculum/model'
import { lowerMedian, lowest, type SeenAttempt } from './attempt'
import { criticalRating, expectedAt } from './verdict'

/** What the arc shows of one phase: the criterion that falls shortest, its rating and what is expected. */
export interface PhaseMark {
  readonly phase: Phase
  /** Null when no criterion of the phase was rated. */
  readonly criterion: string | null
  readonly rating: Rating | null
  readonly expected: Rating
  readonly how: 'seen' | 'imputed' | 'not watched'
  readonly critical: boolean
}

interface Rated {
  readonly attached: AttachedCriterion
  readonly rating: Rating
  readonly how: 'seen' | 'imputed'
}

/** Of several attempts: the lower median of a criterion's ratings, of a critical one the lowest of the last `clean`. */
function ratingOver(pair: Pair, attempts: readonly SeenAttempt[], attached: AttachedCriterion): Rated | null {
  const { key, critical } = attached.criterion
  const seen = attempts.flatMap(
    (attempt) => (critical ? criticalRating(attempt, key) : attempt.explicit.get(key)) ?? [],
  )
  if (seen.length > 0) {
    const rating = critical ? lowest(seen.slice(-pair.standard.clean)) : lowerMedian(seen)
    return { attached, rating, how: 'seen' }
  }
  const imputed = attempts.flatMap((attempt) => attempt.imputed.get(key) ?? [])
  return imputed.length > 0 ? { attached, rating: lowerMedian(imputed), how: 'imputed' } : null
}

/** An imputed rating is a lower bound, so that nothing is known to fall short there. */
const shortOf = ({ attached, rating, how }: Rated, level: number): number =>
  how === 'imputed' ? 0 : Math.max(0, expectedAt(attached, level) - rating)

/**
 * The phases of a pair as one or several attempts show them at a level index: per phase the
 * criterion with the largest shortfall, critical before others, then in key order. `attempts` are in dive order.
 */
export function phaseView(pair: Pair, attempts: readonly SeenAttempt[], level: number): PhaseMark[] {
  const rated = pair.criteria.flatMap((attached) => ratingOver(pair, attempts, attached) ?? [])
  return phaseSets[pair.skill.phaseSet].map((phase): PhaseMark => {
    const worst = rated
      .filter(({ attached }) => attached.criterion.phase === phase)
      .sort(
        (a, b) =>
          shortOf(b, level) - shortOf(a, level) ||
          Number(b.attached.criterion.critical) - Number(a.attached.criterion.critical) ||
          (a.attached.criterion.key < b.attached.criterion.key ? -1 : 1),
      )[0]
    if (!worst) return { phase, criterion: null, rating: null, expected: 0, how: 'not watched', critical: false }
    const { attached, rating, how } = worst
    const { key, critical } = attached.criterion
    return { phase, criterion: key, rating, expected: expectedAt(attached, level), how, critical }
  })
}
