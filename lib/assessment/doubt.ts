import { divedBy, type PairHistory } from './history'
import type { Doubt } from './shortfall'
import type { Signed } from './signed'
import { recheckShown } from './standard'
import { shortfallOf, shortLately } from './standing'
import type { Instant } from './time'
import { criticalRating, expectedAt } from './verdict'

/** Something that puts a sign-off in doubt. Only dives from index `after` on can clear it. */
interface Raise {
  readonly doubt: Doubt
  readonly at: Instant
  readonly after: number
}

/** The doubts of a sign-off's own, over time. */
export interface OwnDoubts {
  /** Those that stand, newest last; empty when it is in no doubt of its own. */
  readonly open: readonly Doubt[]
  /** Spans of dive time in doubt, from the first instant up to but without the dive that cleared it. */
  readonly spans: readonly { readonly from: Instant; readonly until: Instant }[]
  /** Of a recognition: the instant of the dive by which it was shown here; null while it was not. */
  readonly shownAt: Instant | null
}

/** Whether a doubt of its own stood at an instant. */
export const inDoubtAt = ({ spans }: OwnDoubts, at: Instant): boolean =>
  spans.some(({ from, until }) => from <= at && at < until)

/**
 * Critical shortfalls that the signer could not know: dived since, or dived before but seen since, when they would
 * have stood on the day of signing. The order of dives decides, not the order in which they were received.
 */
function shortfalls(history: PairHistory, { level, at }: Signed): Raise[] {
  const signed = divedBy(history, at)
  return history.pair.criteria.flatMap((attached) => {
    const { key, critical } = attached.criterion
    const expected = expectedAt(attached, level)
    if (!critical || expected === 0) return []
    const seenSince = shortLately(history, key, expected, signed)
      .filter((attempt) => attempt.critical.get(key)?.some((seen) => seen.rating < expected && seen.receivedAt > at))
      .map((attempt) => ({ attempt, at, after: signed }))
    const divedSince = history.attempts
      .map((attempt, index) => ({ attempt, at: attempt.at, after: index + 1 }))
      .slice(signed)
      .filter(({ attempt }) => (criticalRating(attempt, key) ?? 4) < expected)
    return [...seenSince, ...divedSince].map(({ attempt, at, after }): Raise => {
      return { doubt: { kind: 'shortfall', shortfall: shortfallOf(attempt, key, expected) }, at, after }
    })
  })
}

/** Cited attempts that somebody looked at again after signing, and that are no longer successes. */
function fallenEvidence(history: PairHistory, { level, at, evidence }: Signed): Raise[] {
  const verdicts = history.verdicts(level)
  return history.attempts.flatMap((attempt, index): Raise[] => {
    if (!evidence.includes(attempt.fact.id) || (attempt.counts && verdicts[index] === 'success')) return []
    const seen = Math.max(...attempt.fact.observations.map(({ receivedAt }) => receivedAt))
    if (seen <= at) return []
    return [{ doubt: { kind: 'evidence', attempt: attempt.fact.id }, at: seen, after: divedBy(history, seen) }]
  })
}

/**
 * Walks the dives since signing. A doubt is raised by a shortfall or by fallen evidence, and cleared by the first dive
 * at which no shortfall stands and the recheck is shown by dives newer than the last raise. A recognition begins like
 * a doubt: the same rule shows it. Later failures that are not critical do not bring a cleared doubt back.
 */
export function ownDoubts(history: PairHistory, signed: Signed): OwnDoubts {
  const raises = [...shortfalls(history, signed), ...fallenEvidence(history, signed)].sort(
    (a, b) => a.after - b.after || a.at - b.at,
  )
  const first = divedBy(history, signed.at)
  let open: Doubt[] = []
  let since: Instant | null = signed.kind === 'recognition' ? signed.at : null
  let from = first
  let next = 0
  let shownAt: Instant | null = null
  const spans: { from: Instant; until: Instant }[] = []
  const raiseUpTo = (at: Instant) => {
    for (let raise = raises[next]; raise && raise.at <= at; raise = raises[++next]) {
      open.push(raise.doubt)
      since ??= raise.at
      from = raise.after
    }
  }
  for (let index = first; index < history.attempts.length; index++) {
    const attempt = history.attempts[index]
    if (!attempt) continue
    raiseUpTo(attempt.at)
    if (since === null || !recheckShown(history, signed.level, from, index + 1)) continue
    spans.push({ from: since, until: attempt.at })
    shownAt ??= signed.kind === 'recognition' ? attempt.at : null
    since = null
    open = []
  }
  raiseUpTo(Number.POSITIVE_INFINITY)
  if (since !== null) spans.push({ from: since, until: Number.POSITIVE_INFINITY })
  return { open, spans, shownAt }
}
