import { expectsByLevel, levelIndexOf } from '../../edition/index-edition'
import { pointerTo } from '../../edition/pointer'
import type { LintProblem, Rule } from '../problem'

/** Expectations that fall from a level to a later one, and critical ones below 3 at any level. */
export const expectations: Rule = ({ document }) =>
  document.criteria.flatMap((criterion, index): LintProblem[] => {
    const path = pointerTo('criteria', index, 'expects')
    const steps = criterion.expects
      .map((step) => ({ ...step, at: levelIndexOf(document, step.level) }))
      .filter((step) => step.at >= 0)
      .sort((a, b) => a.at - b.at)
    const falls = steps.flatMap((step, s): LintProblem[] => {
      const before = steps[s - 1]
      if (!before || before.rating <= step.rating) return []
      const message = `criterion ${criterion.key} expects ${before.rating} at ${before.level} and only ${step.rating} at ${step.level}; an expectation never falls`
      return [{ code: 'expectation-falls', path, message }]
    })
    if (!criterion.critical) return falls
    const low = expectsByLevel(document, criterion).findIndex((rating) => rating < 3)
    const level = document.levels[low]
    if (!level) return falls
    const message = `critical criterion ${criterion.key} expects less than 3 at ${level.title}; expect at least 3 from the first level on`
    return [...falls, { code: 'critical-below-3', path, message }]
  })
