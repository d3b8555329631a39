import type { Pair } from '../curriculum/edition/curriculum'
import type { SeenAttempt } from './attempt'
import { rateIsAtLeast } from './certainty'
import { historyOf, type PairHistory } from './history'
import type { AttemptFact, SignOffWaiver } from './record'
import type { Shortage } from './shortfall'
import { standingShortfalls } from './standing'
import type { AsOf } from './time'
import { expectedAt, type Verdict } from './verdict'

/** An attempt that counts one way or the other. */
export interface Complete {
  readonly attempt: SeenAttempt
  readonly verdict: Exclude<Verdict, 'incomplete'>
}

/** The standard of a pair at a level on a date. */
export interface StandardFinding {
  readonly holds: boolean
  readonly shortage: Shortage
  /** Ids of the successes in the window, oldest first: what a sign-off cites. */
  readonly successes: readonly string[]
  /** The last `of` complete called attempts in the window, oldest first. */
  readonly counted: readonly Complete[]
  readonly failures: number
}

/** An override may bring the count down to this and no further. */
export const fewestSuccesses = 2

/** The complete called attempts that may count, among those with index in [from, to), oldest first. */
export function completeAttempts(history: PairHistory, level: number, from = 0, to = history.attempts.length) {
  const verdicts = history.verdicts(level)
  const complete: Complete[] = []
  for (let index = from; index < to; index++) {
    const attempt = history.attempts[index]
    const verdict = verdicts[index]
    if (attempt?.earns && verdict && verdict !== 'incomplete') complete.push({ attempt, verdict })
  }
  return complete
}

const countOf = (list: readonly Complete[], verdict: Verdict): number =>
  list.filter((complete) => complete.verdict === verdict).length

/** Critical criteria asked at the level that no called attempt in the window rated. */
function unseenCritical(history: PairHistory, level: number): string[] {
  const earning = history.attempts.filter((attempt) => attempt.earns && inWindow(history, attempt))
  return history.pair.criteria
    .filter((attached) => attached.criterion.critical && expectedAt(attached, level) > 0)
    .map((attached) => attached.criterion.key)
    .filter((key) => !earning.some((attempt) => attempt.explicit.has(key)))
}

const inWindow = ({ pair, date }: PairHistory, attempt: SeenAttempt): boolean =>
  attempt.fact.day > date.day - pair.standard.withinDays

/** Probability reached where certainty is asked and not attained, else null. */
function missingCertainty(history: PairHistory, window: readonly Complete[]): number | null {
  const asked = history.pair.standard.certainty
  if (asked === null) return null
  const last = window.slice(-asked.over)
  const reached = rateIsAtLeast(asked.rate, countOf(last, 'success'), last.length)
  return reached >= asked.at ? null : reached
}

/** `standardAt` for a history that is already read. */
export function standardOf(history: PairHistory, level: number, waiver: SignOffWaiver | null = null): StandardFinding {
  const { standard } = history.pair
  const window = completeAttempts(history, level).filter(({ attempt }) => inWindow(history, attempt))
  const counted = window.slice(-standard.of)
  const successes = window.filter(({ verdict }) => verdict === 'success').map(({ attempt }) => attempt)
  const wanted = Math.min(standard.successes, Math.max(fewestSuccesses, waiver?.count ?? standard.successes))
  const missing = (asked: number, found: number, waived: true | undefined) => (waived ? 0 : Math.max(0, asked - found))
  const shortage: Shortage = {
    successes: Math.max(0, wanted - countOf(counted, 'success')),
    coaches: missing(standard.coaches, new Set(successes.flatMap(({ coaches }) => coaches)).size, waiver?.coaches),
    days: missing(standard.days, new Set(successes.map(({ fact }) => fact.day)).size, waiver?.days),
    moments: missing(standard.moments, successes.filter(({ moments }) => moments > 0).length, waiver?.moments),
    certainty: waiver?.certainty ? null : missingCertainty(history, window),
    standing: standingShortfalls(history, level),
    unseen: unseenCritical(history, level),
  }
  return {
    holds: isNone(shortage),
    shortage,
    successes: successes.map(({ fact }) => fact.id),
    counted,
    failures: countOf(counted, 'failure'),
  }
}

/** True when a standard wants nothing more. */
export const isNone = (shortage: Shortage): boolean =>
  shortage.successes + shortage.coaches + shortage.days + shortage.moments === 0 &&
  shortage.certainty === null &&
  shortage.standing.length === 0 &&
  shortage.unseen.length === 0

/**
 * Whether the standard of `pair` holds at a level index on `date`, and what it still wants.
 * `attempts` are those received by the date; others than the pair's are passed over. A waiver lowers only what an
 * override may: coaches, days, moments, certainty, or the count down to two. A standing or unseen critical criterion
 * is never waived.
 */
export const standardAt = (
  pair: Pair,
  attempts: readonly AttemptFact[],
  level: number,
  date: AsOf,
  waiver: SignOffWaiver | null = null,
): StandardFinding => standardOf(historyOf(pair, attempts, date), level, waiver)

/** Whether the recheck is shown by the attempts in [from, to): no standing shortfall, and its successes among the last. */
export function recheckShown(history: PairHistory, level: number, from: number, to = history.attempts.length): boolean {
  const { successes, of } = history.pair.standard.recheck
  const last = completeAttempts(history, level, from, to).slice(-of)
  return countOf(last, 'success') >= successes && standingShortfalls(history, level, to).length === 0
}
