import { ownDoubts } from './doubt'
import type { SignedState } from './holding-state'
import { lapseOf } from './lists'
import type { Evaluation } from './readiness/evaluation'
import { dayIn, type EpochDay } from './time'
import { successesSince } from './validity'

/** What happened to something signed after it was signed, in the order of days. */
export type SignatureEvent =
  | { readonly kind: 'kept by dives'; readonly dives: number; readonly day: EpochDay }
  | { readonly kind: 'doubted'; readonly day: EpochDay; readonly until: EpochDay | null }
  | { readonly kind: 'shown'; readonly day: EpochDay }
  | { readonly kind: 'not shown' }
  | { readonly kind: 'lapses soon' | 'lapsed'; readonly day: EpochDay; readonly renewBy: EpochDay }

/**
 * The history of a sign-off or recognition as its own dives tell it: what kept it, its doubts and their clearing, its lapse.
 * Doubts from below have no history of their own: they stand in `signed.doubts` for as long as what fell is not current.
 */
export function signatureHistory(evaluation: Evaluation, signed: SignedState, zone: string): SignatureEvent[] {
  const history = evaluation.history(signed.pair)
  if (!history) return []
  const today = evaluation.date.day
  const { spans, shownAt } = ownDoubts(history, signed)
  const dives = successesSince(history, signed.level, signed.at)
  const newest = dives.at(-1)
  const recognised = signed.kind === 'recognition'
  // A recognition begins like a doubt: its first span is the time until it was shown.
  const doubts = recognised ? spans.slice(1) : spans
  const lapse = lapseOf(signed, today)
  return [
    ...(recognised
      ? [shownAt === null ? ({ kind: 'not shown' } as const) : ({ kind: 'shown', day: dayIn(shownAt, zone) } as const)]
      : []),
    ...(newest ? [{ kind: 'kept by dives', dives: dives.length, day: newest.day } as const] : []),
    ...doubts.map(({ from, until }): SignatureEvent => {
      return { kind: 'doubted', day: dayIn(from, zone), until: Number.isFinite(until) ? dayIn(until, zone) : null }
    }),
    ...(lapse === 'soon' ? [{ kind: 'lapses soon', day: signed.validUntil, renewBy: signed.renewBy } as const] : []),
    ...(signed.state === 'lapsed'
      ? [{ kind: 'lapsed', day: signed.validUntil, renewBy: signed.renewBy } as const]
      : []),
  ]
}
