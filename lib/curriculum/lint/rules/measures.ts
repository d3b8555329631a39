import { phasesOf } from '../../edition/attach'
import { pointerTo } from '../../edition/pointer'
import { endsOf, fallingBands } from '../../measure/bands'
import { type AskedMeasure, bandRatings, besidePhases, type MeasureInstant, measureFacts } from '../../measure/model'
import type { Criterion } from '../../model'
import { placeFacts } from '../../place'
import type { LintCode, LintProblem, Rule } from '../problem'
import type { WrittenPair } from '../subject'

/** A criterion with its measure, the pairs that it attaches to, and how to name a problem of the measure. */
interface Measured {
  readonly criterion: Criterion
  readonly measure: AskedMeasure
  readonly pairs: readonly WrittenPair[]
  readonly problem: (code: LintCode, at: readonly (string | number)[], message: string) => LintProblem
}

/** Bands that earn less for a better value, that hold no value, or that ask for what cannot be measured. */
function badBands({ measure: { what, unit, bands }, problem }: Measured): LintProblem[] {
  const [smallest, greatest] = measureFacts[what].sizes
  const misread = bandRatings.flatMap((rating): LintProblem[] => {
    const [least, most] = endsOf(bands[rating])
    const at = ['bands', rating]
    if (least > most)
      return [problem('measure-bands', at, `the band of ${rating} begins at ${least} and ends at ${most}; swap them`)]
    const stated = [least, most].find((end) => Number.isFinite(end) && (end < smallest || end > greatest))
    if (stated === undefined) return []
    const possible = `${what} lies between ${smallest} and ${greatest} ${unit}`
    return [problem('measure-bands', at, `the band of ${rating} names ${stated}, and ${possible}`)]
  })
  const falling = fallingBands(bands).map((rating) => {
    const message = `the band of ${rating} reaches beyond that of ${rating - 1}, so that a better value would earn less; let each band lie inside the one below`
    return problem('measure-bands', ['bands', rating], message)
  })
  return [...misread, ...falling]
}

const isPhase = (at: MeasureInstant): boolean => besidePhases.every((beside) => beside !== at)
const has = ({ pair }: WrittenPair, at: MeasureInstant): boolean => phasesOf(pair.skill).some((phase) => phase === at)

/** A measure where it makes no sense: at that instant, in a skill without that phase, or without a board. */
function misplaced({ measure: { what, at }, pairs, problem }: Measured): LintProblem[] {
  const { instants, needsBoard } = measureFacts[what]
  if (!instants.includes(at))
    return [
      problem(
        'measure-misplaced',
        ['at'],
        `${what} says nothing at "${at}"; take it at ${instants.join(', ')} instead`,
      ),
    ]
  const without = isPhase(at) ? pairs.find((written) => !has(written, at)) : undefined
  const boardless = needsBoard ? pairs.find(({ pair }) => !placeFacts[pair.at.place].board) : undefined
  return [
    ...(without
      ? [
          problem(
            'measure-misplaced',
            ['at'],
            `it is taken at "${at}", which ${without.name} does not have; choose a phase of every skill that the criterion is about`,
          ),
        ]
      : []),
    ...(boardless
      ? [
          problem(
            'measure-misplaced',
            ['what'],
            `${what} needs a board over water, and ${boardless.name} has none; narrow what the criterion applies to`,
          ),
        ]
      : []),
  ]
}

/** A distance from the board that an average may hide, or of which nearer is never too near. */
function unguarded({ criterion, measure: { what, bands }, problem }: Measured): LintProblem[] {
  if (what !== 'distanceFromTip') return []
  const open = bandRatings.find((rating) => bands[rating].least === undefined)
  return [
    ...(criterion.critical
      ? []
      : [problem('distance-unguarded', ['what'], 'a distance from the board is critical; mark the criterion so')]),
    ...(open === undefined
      ? []
      : [
          problem(
            'distance-unguarded',
            ['bands', open],
            `the band of ${open} has no least, so that no distance would be too near; write the one that is`,
          ),
        ]),
  ]
}

/** What may be measured for a criterion: bands that grow with the rating, at an instant that every skill of it has, safely. */
export const measures: Rule = ({ document, pairs }) =>
  document.criteria.flatMap((criterion, index): LintProblem[] => {
    const { measure } = criterion
    if (!measure) return []
    const measured: Measured = {
      criterion,
      measure,
      pairs: pairs.filter(({ pair }) => pair.criteria.some((attached) => attached.criterion.key === criterion.key)),
      problem: (code, at, message) => ({
        code,
        path: pointerTo('criteria', index, 'measure', ...at),
        message: `the measure of criterion ${criterion.key}: ${message}`,
      }),
    }
    return [...badBands(measured), ...misplaced(measured), ...unguarded(measured)]
  })
