import { inDoubtAt, type OwnDoubts } from './doubt'
import type { PairHistory } from './history'
import { recognitionDays, type Signed } from './signed'
import type { EpochDay, Instant } from './time'

/** A success that keeps something signed alive. */
export interface Refresh {
  readonly at: Instant
  readonly day: EpochDay
}

/** Days on which a held dive rests on a lead-up, which does not lapse meanwhile; both inclusive. */
export interface Protection {
  readonly from: EpochDay
  readonly until: EpochDay
}

/** What is held above a pair and rests on it. */
export interface Above {
  readonly successes: readonly Refresh[]
  readonly protections: readonly Protection[]
}

/** Until when a signature is valid, and what kept it so. */
export interface Validity {
  /** The last day on which it is valid, inclusive. */
  readonly until: EpochDay
  /** Successes at the pair itself that counted while it was valid: they refresh what it rests on. */
  readonly successes: readonly Refresh[]
  /** False for a recognition that was not shown while it was valid. */
  readonly shown: boolean
}

/** Successes that may count at a level index, dived after `since`. */
export function successesSince(history: PairHistory, level: number, since: Instant): Refresh[] {
  const verdicts = history.verdicts(level)
  return history.attempts.flatMap((attempt, index) =>
    attempt.earns && attempt.at > since && verdicts[index] === 'success'
      ? [{ at: attempt.at, day: attempt.fact.day }]
      : [],
  )
}

/**
 * How long something signed is valid: `validForDays` from its signing, and again from each success, there or on a held
 * skill that rests on it, that falls on a valid day and not in a doubt of its own. A recognition is valid for 120 days
 * until it is shown.
 */
export function validityOf(history: PairHistory, signed: Signed, doubts: OwnDoubts, above: Above): Validity {
  const lasts = history.pair.standard.validForDays
  const own = successesSince(history, signed.level, signed.at)
  const clear = (refresh: Refresh) => refresh.at > signed.at && !inDoubtAt(doubts, refresh.at)
  const events = [
    ...own.filter(clear).map((refresh) => ({ from: refresh.day, until: refresh.day + lasts, own: refresh })),
    ...above.successes.filter(clear).map(({ day }) => ({ from: day, until: day + lasts, own: null })),
    ...above.protections.map(({ from, until }) => ({ from, until, own: null })),
  ].sort((a, b) => a.from - b.from)
  let until = signed.day + (signed.kind === 'recognition' ? recognitionDays : lasts)
  const successes: Refresh[] = []
  for (const event of events) {
    if (event.from > until) break
    until = Math.max(until, event.until)
    if (event.own) successes.push(event.own)
  }
  const shown = signed.kind === 'sign-off' || successes.some(({ at }) => at === doubts.shownAt)
  return { until, successes, shown }
}
