import { sentence } from './readiness/grammar'
import { dayName, type Words } from './readiness/wording'
import type { EpochDay } from './time'

/** Days for which a note that a diver has grown quickly is shown: common practice, no published source. */
export const careDays = 90

/** The latest day on which growth was noted, while it still asks for care on `today`; null otherwise. */
export function careSince(noted: readonly EpochDay[], today: EpochDay): EpochDay | null {
  const recent = noted.filter((day) => day <= today && today - day < careDays)
  return recent.length > 0 ? Math.max(...recent) : null
}

/** What to do with a diver who has grown quickly. Common practice in the trade, no published source. */
export const sayCare = (since: EpochDay, words: Words): string =>
  `${sentence(`${words.diver ?? 'the diver'} has grown quickly, as noted on ${dayName(since, words)}`)} Technique may be off for a while: check lead-ups and distances before new dives.`
