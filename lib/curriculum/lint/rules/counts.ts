import type { LintProblem, Rule } from '../problem'

const mostCritical = 3
const mostInAll = 12

/** Pairs without a critical criterion, with more than 3 of them, or with more than 12 criteria in all. */
export const counts: Rule = ({ pairs }) =>
  pairs.flatMap(({ pair, name, path }): LintProblem[] => {
    const all = pair.criteria.length
    const critical = pair.criteria
      .filter((attached) => attached.criterion.critical)
      .map(({ criterion }) => criterion.key)
    const problems: LintProblem[] = []
    if (critical.length === 0) {
      const message = `${name} has no critical criterion; say what must be safe in it before anything else counts`
      problems.push({ code: 'no-critical-criterion', path, message })
    }
    if (critical.length > mostCritical) {
      const message = `${name} has ${critical.length} critical criteria (${critical.join(', ')}); keep ${mostCritical} at most`
      problems.push({ code: 'too-many-critical', path, message })
    }
    if (all > mostInAll) {
      const message = `${name} has ${all} criteria; nobody can watch more than ${mostInAll}, so narrow what some apply to`
      problems.push({ code: 'too-many-criteria', path, message })
    }
    return problems
  })
