import type { AttemptItem } from '@/lib/assessment/deck/contract'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { type RatingSheet, ratingSheet } from '../state/rating-sheet'
import { useDeck } from './deck-context'

/** What an attempt was of, as it can be rated today. */
export interface Observed {
  readonly pair: Pair
  readonly name: string
  /** False when no consent to video of the diver is in force: no moment is kept. */
  readonly video: boolean
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
    const diver = roster.divers.get(attempt.diver)
    return {
      pair,
      name: diver?.shortName ?? 'A diver',
      video: diver?.video !== false,
      sheet,
      applies: {
        criteria: new Set(sheet.rows.map(({ criterion }) => criterion.key)),
        faults: new Set(sheet.phases.flatMap(({ faults }) => faults.map(({ key }) => key))),
      },
    }
  }
}
