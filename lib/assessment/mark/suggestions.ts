import type { Pair } from '../../curriculum/edition/curriculum'
import type { Criterion } from '../../curriculum/model'
import { passesBoard } from '../measure/distance'
import type { Measured } from '../measure/measured'
import { type MeasuredCriterion, type Suggestion, suggest } from '../measure/suggest'
import { isAt } from './instant'
import type { Mark, MarkKey } from './mark'

/** A measure that was kept: when it was taken, and the numbers that came of it by the name of what they measure. */
export interface KeptNumbers {
  /** The frame in milliseconds of the film; null for what is read between marks of the whole flight. */
  readonly frameMs: number | null
  /** Arms from straight down, which no criterion asks. */
  readonly down: boolean
  readonly results: readonly (Measured & { readonly what: string })[]
}

/**
 * What a kept measure means for a criterion: the suggestion, or what is wanting for one. That are marks without which nobody knows
 * what it was taken at; the side of the tip, which older distances do not have; or the frame in which the body passes the board:
 * the one that was measured is not on the way down, or the point there was `height` metres over the tip.
 */
export type CriterionSuggestion =
  | { readonly criterion: Criterion; readonly suggestion: Suggestion }
  | { readonly criterion: Criterion; readonly unmarked: readonly MarkKey[] }
  | { readonly criterion: Criterion; readonly wanting: 'side' }
  | { readonly criterion: Criterion; readonly wanting: 'way down' }
  | { readonly criterion: Criterion; readonly wanting: 'level'; readonly height: number }

const hasMeasure = (criterion: Criterion): criterion is Criterion & MeasuredCriterion => criterion.measure !== undefined

/**
 * What a coach's kept measure suggests for the criteria of a pair that ask for it, at the instants that the same coach marked.
 * A measure of another instant suggests nothing. Nothing is rated by it.
 */
export function suggestionsOf(kept: KeptNumbers, marks: readonly Mark[], pair: Pair): CriterionSuggestion[] {
  if (kept.down) return []
  return pair.criteria.flatMap(({ criterion }): CriterionSuggestion[] => {
    if (!hasMeasure(criterion)) return []
    const { what, at } = criterion.measure
    const result = kept.results.find((one) => one.what === what)
    if (!result) return []
    const height = what === 'distanceFromTip' ? kept.results.find((one) => one.what === 'heightOverTip')?.value : 0
    if (height === undefined) return [{ criterion, wanting: 'side' }]
    if (at === 'passing' && !passesBoard(height)) return [{ criterion, wanting: 'level', height }]
    const taken = kept.frameMs === null ? (at === 'whole flight' ? 'yes' : 'no') : isAt(at, kept.frameMs, marks)
    if (taken === 'no') return at === 'passing' ? [{ criterion, wanting: 'way down' }] : []
    if (taken !== 'yes') return [{ criterion, unmarked: taken.unmarked }]
    return [{ criterion, suggestion: suggest(result, criterion, pair.holding.place) }]
  })
}
