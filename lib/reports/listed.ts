import { writeWaitsFor } from '../assessment/readiness/waits-for'
import type { Curriculum } from '../curriculum/edition/curriculum'
import { diversIn, waitIn } from './filter'
import type { DiverOnPathway, Step } from './pathway'
import type { ListQuery } from './query'
import { type AskedStep, waiting } from './waits'

/** The steps that a question is about: the next level, or the board moves that it names. */
export function stepsOf(diver: DiverOnPathway, moves: ListQuery['moves']): Step[] {
  if (moves === null) return diver.next ? [diver.next] : []
  return diver.moves.filter(({ target }) => moves.includes(target))
}

/** Every step of some divers towards the next level or the moves named. */
export const askedSteps = (divers: readonly DiverOnPathway[], moves: ListQuery['moves']): AskedStep[] =>
  divers.flatMap((diver) => stepsOf(diver, moves).map((step) => ({ diver: diver.id, step })))

function belongs(curriculum: Curriculum, diver: DiverOnPathway, { filter, moves, figure, waits }: ListQuery): boolean {
  const steps = stepsOf(diver, moves)
  if (waits !== null)
    return steps.some(
      (step) =>
        waiting.includes(step.figure) &&
        (figure === null || step.figure === figure) &&
        step.waitsFor.some((what) => writeWaitsFor(what) === waits && waitIn(curriculum, filter, what)),
    )
  if (figure === 'divers') return true
  if (figure === 'level to review') return diver.toReview
  return steps.length === 0 ? figure === 'held' : steps.some((step) => step.figure === figure)
}

/** The divers behind one number of the region, in the order given. */
export const listed = (curriculum: Curriculum, divers: readonly DiverOnPathway[], query: ListQuery): DiverOnPathway[] =>
  diversIn(curriculum, divers, query.filter).filter((diver) => belongs(curriculum, diver, query))
