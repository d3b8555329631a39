import type { AttemptItem } from '@/lib/assessment/deck/contract'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { type RatingSheet, ratingSheet } from '../state/rating-sheet'
import { useDeck } from './deck-context'

/** What an attempt was of, as it can be rated today. */
export interface Observed {
  readonly pair: Pair
  readonly name: string
  readonly sheet: RatingSheet
  readonly applies: { readonly criteria: ReadonlySet<string>; readonly faults: ReadonlySet<string> }
}

/** Null when the edition does not have the skill any more. */
export function useObserved(): (attempt: AttemptItem) => Observed | null {
  const { roster } = useDeck()
  return (attempt) => {
    const pair = roster.curriculum.pairs.get(`${attempt.skill}@${attempt.place}`)
    if (!pair) return null
    const sheet = ratingSheet(roster.curriculum, pair, attempt.atLevel)
    return {
      pair,
      name: roster.divers.get(attempt.diver)?.shortName ?? 'A diver',
      sheet,
      applies: {
        criteria: new Set(sheet.rows.map(({ criterion }) => criterion.key)),
        faults: new Set(sheet.phases.flatMap(({ faults }) => faults.map(({ key }) => key))),
      },
    }
  }
}
