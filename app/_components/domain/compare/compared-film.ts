import type { OnFrames } from '@/lib/assessment/measure/taken'
import type { ClipMoment } from '../clip/clip-moment'
import type { FilmMark } from './timing'

/** What was placed by a measure that was kept, and the instants of its frames. */
export interface PlacedOn extends Pick<OnFrames, 'kind' | 'points'> {
  readonly times: readonly number[]
}

/** One of the two moments: the film, whose it is, and what was read off it. */
export interface ComparedFilm {
  readonly moment: ClipMoment
  /** Whose dive and when: told apart from the other by it. */
  readonly name: string
  /** The moment's own page. */
  readonly href: string
  readonly marks: readonly FilmMark[]
  /** How long one frame is shown, in seconds, where it is known. */
  readonly frame: number | null
  readonly placed: readonly PlacedOn[]
  /** The frames that were measured, to lay both films on. */
  readonly measured: readonly FilmMark[]
}
