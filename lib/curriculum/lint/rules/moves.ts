import { implicitMove, moveFamilyOf } from '../../edition/index-edition'
import { pointerTo } from '../../edition/pointer'
import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'

/** Board moves that do not lead from a board to a higher one, or that no dive needs. */
export const moves: Rule = ({ document }) =>
  document.boardMoves.flatMap((move, index): LintProblem[] => {
    const [from, to] = [placeFacts[move.from], placeFacts[move.to]]
    const path = pointerTo('boardMoves', index)
    if (!from.board || !to.board || (from.height ?? 0) >= (to.height ?? 0)) {
      const message = `board move ${move.key} goes from ${from.label} to ${to.label}; it leads from a board to a higher one`
      return [{ code: 'move-misplaced', path: `${path}/to`, message }]
    }
    const needed = document.skills.some(
      (skill) =>
        moveFamilyOf(skill) === move.family &&
        skill.places.some((at) => at.place === move.to && implicitMove([move], skill, at) !== null),
    )
    if (needed) return []
    const message = `no ${move.family} dive at ${to.label} needs board move ${move.key}; add one, or take the move away`
    return [{ code: 'move-misplaced', path, message }]
  })
