import type { PairKey } from '../curriculum/edition/curriculum'
import type { Rating } from '../curriculum/model'
import type { TargetKey } from './record'
import type { EpochDay } from './time'

/** What a standard still wants; counts of successes, coaches, days, moments still missing. 0 or null: nothing. */
export interface Shortage {
  readonly successes: number
  readonly coaches: number
  readonly days: number
  readonly moments: number
  /** Probability reached where certainty is asked and not attained. */
  readonly certainty: number | null
  readonly standing: readonly StandingShortfall[]
  /** Critical criteria that no counted attempt has rated. */
  readonly unseen: readonly string[]
}

/** A critical criterion that fell short in one of the last `clean` attempts in which it was rated. */
export interface StandingShortfall {
  readonly criterion: string
  readonly rating: Rating
  readonly expected: Rating
  readonly attempt: string
  readonly day: EpochDay
}

/** Why a sign-off is in doubt: a shortfall or fallen evidence of its own, or something below it that fell. */
export type Doubt =
  | { readonly kind: 'shortfall'; readonly shortfall: StandingShortfall }
  | { readonly kind: 'evidence'; readonly attempt: string }
  | { readonly kind: 'below'; readonly pair: PairKey }
  | { readonly kind: 'withdrawn below'; readonly target: TargetKey }
