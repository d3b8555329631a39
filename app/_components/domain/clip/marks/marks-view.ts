import type { MarkLine } from '@/lib/assessment/mark/apart'
import type { Mark, MarkKey } from '@/lib/assessment/mark/mark'

/** A coach whose marks or measures are shown. */
export interface Marker {
  readonly id: string
  readonly name: string
  readonly initials: string
}

/** The marks of a moment as its page shows them. */
export interface MarksView {
  readonly moment: string
  /** What there is to mark, in order; empty where the curriculum does not name the phases. */
  readonly keys: readonly MarkKey[]
  readonly own: readonly Mark[]
  /** What is odd about the coach's own marks, in words. */
  readonly odd: readonly string[]
  readonly coaches: readonly Marker[]
  /** All coaches' marks beside each other, in the order of `coaches`. */
  readonly lines: readonly MarkLine[]
}

/** A mark to keep; without a time it takes the coach's own back. */
export interface MarkAsk {
  readonly moment: string
  readonly key: MarkKey
  readonly atMs: number | null
  readonly frameUs: number | null
}

/** What the server says to something that was sent outside a form. */
export type Answer = { readonly ok: true } | { readonly ok: false; readonly message: string }

export type MarkAction = (ask: MarkAsk) => Promise<Answer>
