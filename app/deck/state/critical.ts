import type { Phase, Rating } from '@/lib/curriculum/model'
import type { RatingRow, RatingSheet } from './rating-sheet'
import { stillToRate } from './rating-sheet'

interface Marked {
  readonly ratings: Readonly<Record<string, Rating>>
  readonly notSeen: readonly string[]
}

/**
 * The critical criterion that lies under the thumb: the one picked, else the first that still waits (in the open phase,
 * then anywhere), else one of the open phase, else the last. Undefined when the sheet has none.
 */
export function criticalAtHand(
  sheet: RatingSheet,
  marked: Marked,
  phase: Phase | undefined,
  picked: string | null,
): RatingRow | undefined {
  const here = (row: RatingRow) => row.criterion.phase === phase
  const waiting = stillToRate(sheet, marked)
  return (
    sheet.critical.find(({ criterion }) => criterion.key === picked) ??
    waiting.find(here) ??
    waiting[0] ??
    sheet.critical.find(here) ??
    sheet.critical.at(-1)
  )
}

/** The phase to open after a critical criterion was dealt with: that of the next one, unless the coach is elsewhere. */
export function phaseAfter(
  sheet: RatingSheet,
  marked: Marked,
  dealtWith: RatingRow,
  phase: Phase | undefined,
): Phase | undefined {
  if (dealtWith.criterion.phase !== phase) return phase
  const waiting = stillToRate(sheet, marked).filter(({ criterion }) => criterion.key !== dealtWith.criterion.key)
  return waiting[0]?.criterion.phase ?? phase
}
