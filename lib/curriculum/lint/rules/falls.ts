import { facetsOfSkill } from '../../edition/attach'
import type { LintProblem, Rule } from '../problem'

/** Common practice, no published source: at a height that is moved up to, an entry is fallen before it is dived. */
export const falls: Rule = ({ document, pairs, before }) => {
  const heights = new Set(document.boardMoves.map(({ to }) => to))
  const sideOf = new Map(
    pairs
      .filter(({ pair }) => pair.skill.phaseSet === 'fall-in')
      .map(({ pair }) => [pair.key, `${pair.at.place} ${pair.skill.facets.sense}`]),
  )
  return pairs.flatMap(({ pair, name, path }): LintProblem[] => {
    const { sense, enters } = facetsOfSkill(pair.skill)
    if (pair.skill.dive === null || enters !== 'head-first' || !heights.has(pair.at.place)) return []
    if ([...before(pair.key)].some((earlier) => sideOf.get(earlier) === `${pair.at.place} ${sense}`)) return []
    const message = `${name} turns ${sense}, and no fall-in that does has to come before it at that height; require one`
    return [{ code: 'dive-before-fall', path, message }]
  })
}
