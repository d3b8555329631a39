import type { Curriculum, Pair } from '../curriculum/edition/curriculum'
import type { Reach } from './consent'
import type { Refused } from './outcome'

/** What a moment is named as showing: a criterion at a level, or a fault; by the keys of the edition. */
export type Shows =
  | { readonly kind: 'criterion'; readonly criterion: string; readonly level: string }
  | { readonly kind: 'fault'; readonly fault: string }

/** What naming an exemplar is judged on. */
export interface ExemplarCase {
  readonly curriculum: Curriculum
  /** The pair that the moment shows. */
  readonly pair: Pair
  readonly shows: Shows
  /** How far the diver's consent reaches; null: there is none in force. */
  readonly reach: Reach | null
  /** What the moment is named as already. */
  readonly named: readonly Shows[]
}

const keyOf = (shows: Shows): string =>
  shows.kind === 'fault' ? `fault ${shows.fault}` : `criterion ${shows.criterion} ${shows.level}`

const noCriterion = {
  code: 'no such criterion',
  message: 'Choose a criterion or a fault of this skill.',
  field: 'shows',
} as const

/** Why a moment may not be named as that, as a sentence for the head coach; null when it may. */
export function exemplarRefusal({ curriculum, pair, shows, reach, named }: ExemplarCase): Refused | null {
  if (reach === null)
    return {
      code: 'no consent',
      message: 'No consent to exemplars of this diver is in force: record it first, under “Safety and consent”.',
    }
  if (named.some((one) => keyOf(one) === keyOf(shows)))
    return { code: 'named before', message: 'The moment is named as that already.', field: 'shows' }
  if (shows.kind === 'fault')
    return pair.criteria.some(({ criterion }) => criterion.faults.includes(shows.fault)) ? null : noCriterion
  const attached = pair.criteria.find(({ criterion }) => criterion.key === shows.criterion)
  if (!attached) return noCriterion
  const level = curriculum.levelIndex(shows.level)
  return level >= pair.level && (attached.expects[level] ?? 0) > 0
    ? null
    : { code: 'no such level', message: 'Choose a level that asks this criterion in this skill.', field: 'level' }
}
