import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'
import type { WrittenPair } from '../subject'

const guards = ({ pair }: WrittenPair, ...phases: readonly string[]): boolean =>
  pair.criteria.some(({ criterion }) => criterion.critical && phases.includes(criterion.phase))

/** A dive marked as a lead-up to the board move: marked so, it would need none. */
function aroundTheMove({ pair, name, path }: WrittenPair): LintProblem[] {
  if (pair.skill.dive === null || !pair.at.beforeMove) return []
  const message = `${name} is a dive and is marked beforeMove, so nobody would be moved up before it; take the mark away`
  return [{ code: 'dive-before-move', path: `${path}/beforeMove`, message }]
}

/** What ends in the water without a critical criterion for the entry, or a dive from a board without one for the distance. */
function unwatched(written: WrittenPair): LintProblem[] {
  const { pair, name, path } = written
  const { height, board } = placeFacts[pair.at.place]
  if (height === null || pair.skill.phaseSet === 'drill') return []
  const missing = (what: string): LintProblem => ({
    code: 'safety-unwatched',
    path,
    message: `${name} has no critical criterion for ${what}; a good average must not hide what is unsafe there`,
  })
  return [
    ...(guards(written, 'entry') ? [] : [missing('the entry')]),
    ...(board && pair.skill.dive !== null && !guards(written, 'flight', 'twist start')
      ? [missing('the distance from the board')]
      : []),
  ]
}

/** Dives that go round the board move, and skills in which the entry or the distance can be averaged away. */
export const guarded: Rule = ({ pairs }) =>
  pairs.flatMap((written) => [...aroundTheMove(written), ...unwatched(written)])
