import type { Quantity } from '@/lib/assessment/measure/measured'
import type { Caution, Result } from '@/lib/assessment/measure/take'
import type { OnFrames, Taken } from '@/lib/assessment/measure/taken'
import type { Answer, Marker } from '../marks/marks-view'

/** A measure that was kept, as the page shows it. */
export interface SavedMeasure {
  readonly id: string
  readonly coach: Marker
  readonly own: boolean
  readonly taken: Taken
  readonly results: readonly Result[]
  readonly cautions: readonly Caution[]
  /** What it suggests for the criteria that ask for it, a sentence each. */
  readonly suggests: readonly string[]
}

/** The measures of a moment as its page shows them. */
export interface MeasuresView {
  readonly moment: string
  /** Metres of the board above the water; null where there is none. */
  readonly board: number | null
  readonly saved: readonly SavedMeasure[]
}

/** A measure to keep: what was placed. The server computes what comes of it, and reads a flight's marks itself. */
export interface MeasureAsk {
  readonly moment: string
  readonly taken: OnFrames | { readonly kind: 'flight'; readonly drop: Quantity }
}

export type MeasureAction = (ask: MeasureAsk) => Promise<Answer>
export type TakeBackAction = (ask: { readonly moment: string; readonly measure: string }) => Promise<Answer>
