import type { Pair } from '../curriculum/edition/curriculum'
import type { SeenAttempt } from './attempt'
import { seeAttempt } from './attempt'
import type { AttemptFact } from './record'
import type { AsOf, Instant } from './time'
import { type Verdict, verdictAt } from './verdict'

/** All attempts at one pair in the order of dives, as of a date. */
export interface PairHistory {
  readonly pair: Pair
  readonly date: AsOf
  readonly attempts: readonly SeenAttempt[]
  /** The verdict of each attempt at a level index, in the same order; worked out once. */
  readonly verdicts: (level: number) => readonly Verdict[]
}

const byPlace = (a: SeenAttempt, b: SeenAttempt): number =>
  a.at - b.at || (a.fact.id < b.fact.id ? -1 : a.fact.id > b.fact.id ? 1 : 0)

/** Reads the attempts at `pair` among `facts`, which hold only what was received by `date` (as-of.ts). */
export function historyOf(pair: Pair, facts: readonly AttemptFact[], date: AsOf): PairHistory {
  const attempts = facts
    .filter((fact) => fact.pair === pair.key)
    .map((fact) => seeAttempt(pair, fact, date))
    .sort(byPlace)
  const known = new Map<number, readonly Verdict[]>()
  return {
    pair,
    date,
    attempts,
    verdicts: (level) => {
      const verdicts = known.get(level) ?? attempts.map((attempt) => verdictAt(pair, attempt, level))
      known.set(level, verdicts)
      return verdicts
    },
  }
}

/** How many attempts were dived at or before `instant`: the index of the first that is newer. */
export const divedBy = (history: PairHistory, instant: Instant): number => {
  const first = history.attempts.findIndex((attempt) => attempt.at > instant)
  return first < 0 ? history.attempts.length : first
}
