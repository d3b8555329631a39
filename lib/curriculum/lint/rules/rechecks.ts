import type { LintProblem, Rule } from '../problem'
import { listStandards, writes } from './standards'

/** Rechecks that ask for more successes, or for a greater share of them, than the standard that they stand in for. */
export const rechecks: Rule = (subject) =>
  listStandards(subject).flatMap((place): LintProblem[] => {
    const { successes, of, recheck } = place.standard
    if (!writes(place, 'recheck', 'successes', 'of')) return []
    // In whole numbers: recheck.successes / recheck.of > successes / of.
    const harder = recheck.successes > successes || recheck.successes * of > successes * recheck.of
    if (!harder) return []
    const message = `the recheck of ${place.owner} (${recheck.successes} of ${recheck.of}) is harder than its standard (${successes} of ${of}); a recheck is the lighter one`
    return [{ code: 'recheck-too-hard', path: place.path, message }]
  })
