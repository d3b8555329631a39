import type { AttachedCriterion, Pair } from '../curriculum/edition/curriculum'
import type { Rating } from '../curriculum/model'
import type { SeenAttempt } from './attempt'

/** What an attempt is at a level: incomplete counts neither way. */
export type Verdict = 'success' | 'failure' | 'incomplete'

/** The rating that a criterion must reach at a level, by level index; 0 where nothing is expected. */
export const expectedAt = (attached: AttachedCriterion, level: number): Rating => attached.expects[level] ?? 0

/** The lowest critical rating by anyone; undefined when nobody rated it. */
export const criticalRating = (attempt: SeenAttempt, criterion: string): Rating | undefined =>
  attempt.lowest.get(criterion)

/** Points by which the explicit rating falls short; 0 when it does not, or when nobody rated it. */
function shortfall(attempt: SeenAttempt, attached: AttachedCriterion, level: number): number {
  const { key, critical } = attached.criterion
  const rating = critical ? criticalRating(attempt, key) : attempt.explicit.get(key)
  return rating === undefined ? 0 : Math.max(0, expectedAt(attached, level) - rating)
}

function isKnown(attempt: SeenAttempt, attached: AttachedCriterion, level: number): boolean {
  const { key } = attached.criterion
  return attempt.explicit.has(key) || (attempt.imputed.get(key) ?? -1) >= expectedAt(attached, level)
}

/**
 * The verdict of an attempt at a level index. Failure as soon as the explicit ratings alone cannot
 * be a success: a critical shortfall, one above 1 point, or a sum above `slack`. Success when nothing is unknown.
 * Whether it counts is another question: `SeenAttempt.earns`.
 */
export function verdictAt(pair: Pair, attempt: SeenAttempt, level: number): Verdict {
  const asked = pair.criteria.filter((attached) => expectedAt(attached, level) > 0)
  let points = 0
  for (const attached of asked) {
    const short = shortfall(attempt, attached, level)
    if (short > 1 || (short > 0 && attached.criterion.critical)) return 'failure'
    points += short
  }
  if (points > pair.standard.slack) return 'failure'
  return asked.every((attached) => isKnown(attempt, attached, level)) ? 'success' : 'incomplete'
}
