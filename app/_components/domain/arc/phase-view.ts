import type { Rating } from '@/lib/curriculum/model'

/** What one phase of an attempt (or of several) shows: one column of the rule. */
export interface PhaseView {
  readonly phase: string
  /** The phase as the programme writes it. */
  readonly label: string
  /** The criterion shown, in words; null when none of the phase was rated. */
  readonly criterion: string | null
  readonly rating: Rating | null
  /** 0 when the level asks nothing of this phase: no notch. */
  readonly expected: Rating
  readonly how: 'seen' | 'imputed' | 'not watched'
  /** The phase has a critical criterion: a double line under its column. */
  readonly critical: boolean
  /** The criterion shown is a critical one: only that can be a critical shortfall. */
  readonly showsCritical: boolean
}

export type ArcVariant =
  | 'running'
  | 'standing'
  | 'running feet-first'
  | 'standing feet-first'
  | 'twister'
  | 'standing twister'
  | 'fall-in'
  | 'drill'

export interface ArcSubject {
  readonly variant: ArcVariant
  /** Out over the water, or in towards the board. */
  readonly facing: 'out' | 'in'
  /** Which way the body turns over; null when it does not. */
  readonly turning: 'forwards' | 'backwards' | null
  readonly enters: 'head-first' | 'feet-first'
  /** A place key: a board or the poolside has a path, a dry place only the rule. */
  readonly height: string
  readonly phases: readonly PhaseView[]
}

/** Seen, and below what is asked. */
export const fallsShort = (view: PhaseView): boolean =>
  view.how === 'seen' && view.rating !== null && view.rating < view.expected

/** The one thing on a rule that is drawn in coral. */
export const fallsShortCritically = (view: PhaseView): boolean => view.showsCritical && fallsShort(view)
