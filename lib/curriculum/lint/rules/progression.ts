import { facetsOfSkill } from '../../edition/attach'
import { overWater } from '../../place'
import type { LintProblem, Rule } from '../problem'

/** Head-first at a place before any feet-first skill there, and reverse or inward head-first from the poolside. */
export const progression: Rule = ({ pairs, before }) => {
  const feetFirst = new Set(
    pairs.filter(({ pair }) => facetsOfSkill(pair.skill).enters === 'feet-first').map(({ pair }) => pair.key),
  )
  return pairs.flatMap(({ pair, name, path }): LintProblem[] => {
    const { place } = pair.at
    const facets = facetsOfSkill(pair.skill)
    if (!overWater(place) || facets.enters !== 'head-first') return []
    const problems: LintProblem[] = []
    if (place === 'poolside' && (facets.direction === 'reverse' || facets.direction === 'inward')) {
      const message = `${name} turns the head towards the pool edge; teach ${facets.direction} head-first from a board only`
      problems.push({ code: 'poolside-backwards', path, message })
    }
    if (![...before(pair.key)].some((earlier) => feetFirst.has(earlier) && earlier.endsWith(`@${place}`))) {
      const message = `${name} goes in head first, and nothing feet-first at that place has to come before it; require one`
      problems.push({ code: 'head-first-too-soon', path, message })
    }
    return problems
  })
}
