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

/** A history of attempts already read; `known` gives the verdicts that are known of some of them. */
function historyFrom(
  pair: Pair,
  date: AsOf,
  seen: readonly SeenAttempt[],
  known: (level: number) => ReadonlyMap<SeenAttempt, Verdict>,
): PairHistory {
  const attempts = [...seen].sort(byPlace)
  const byLevel = new Map<number, readonly Verdict[]>()
  return {
    pair,
    date,
    attempts,
    verdicts: (level) => {
      const before = byLevel.get(level)
      if (before) return before
      const given = known(level)
      const verdicts = attempts.map((attempt) => given.get(attempt) ?? verdictAt(pair, attempt, level))
      byLevel.set(level, verdicts)
      return verdicts
    },
  }
}

const noneKnown: ReadonlyMap<SeenAttempt, Verdict> = new Map()

/** Reads the attempts at `pair` among `facts`, which hold only what was received by `date` (as-of.ts). */
export const historyOf = (pair: Pair, facts: readonly AttemptFact[], date: AsOf): PairHistory =>
  historyFrom(
    pair,
    date,
    facts.filter((fact) => fact.pair === pair.key).map((fact) => seeAttempt(pair, fact, date)),
    () => noneKnown,
  )

/** The history with more attempts at its pair; those that it has are not read again. */
export function withAttempts(history: PairHistory, facts: readonly AttemptFact[]): PairHistory {
  if (facts.length === 0) return history
  const { pair, date, attempts } = history
  const more = facts.map((fact) => seeAttempt(pair, fact, date))
  return historyFrom(pair, date, [...attempts, ...more], (level) => {
    const verdicts = history.verdicts(level)
    return new Map(attempts.flatMap((attempt, index) => [[attempt, verdicts[index] ?? 'incomplete'] as const]))
  })
}

/** How many attempts were dived at or before `instant`: the index of the first that is newer. */
export const divedBy = (history: PairHistory, instant: Instant): number => {
  const first = history.attempts.findIndex((attempt) => attempt.at > instant)
  return first < 0 ? history.attempts.length : first
}
