import { type Refused, refuse } from './outcome'
import type { ClosesKind } from './record'
import type { EpochDay } from './time'

/** What a stand-down can close, the widest first. */
export const closesKinds = ['water', 'boards', 'new'] as const satisfies readonly ClosesKind[]

interface Span {
  readonly from: EpochDay
  /** Last day, inclusive; null: until a head coach ends it. */
  readonly until: EpochDay | null
}

/** What stands against a stand-down with these days, set on `today`; null when nothing does. */
export function refuseStandDown({ from, until }: Span, today: EpochDay): Refused | null {
  if (until === null) return null
  if (until < from)
    return { code: 'ends first', message: 'It ends before it begins: its last day comes later.', field: 'until' }
  return until < today
    ? {
        code: 'over already',
        message: 'It would be over already: leave the last day open, or name one to come.',
        field: 'until',
      }
    : null
}

/** The last day of a stand-down that leaves the diver free from `freeFrom`, set on `today`; or why that cannot be. */
export function endOf(
  { until }: Span,
  freeFrom: EpochDay,
  today: EpochDay,
): { readonly ok: true; readonly until: EpochDay } | { readonly ok: false; readonly refusal: Refused } {
  if (freeFrom < today)
    return refuse('past', 'It was in force until now: end it from today, or from a day to come.', 'freeFrom')
  if (until !== null && freeFrom > until)
    return refuse('later', 'It ends before that day: an end can only bring its last day forward.', 'freeFrom')
  return { ok: true, until: freeFrom - 1 }
}
