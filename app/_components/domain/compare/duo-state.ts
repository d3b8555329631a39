import { type Film, jumpTo } from '../clip/film'
import { type DuoTime, duoTime, type Side, type Timing } from './duo-time'

/** Two films as they stand: `time` is that of the first, in seconds, and `speed` a share of the true one. */
export interface DuoState {
  readonly films: Record<Side, Film | null>
  timing: Timing
  time: number
  speed: number
}

/** The arithmetic of two films with what they say of themselves by now. */
export function timeOf({ films, timing }: DuoState): DuoTime {
  const length = (side: Side) => films[side]?.video.duration ?? null
  return duoTime(timing, { first: length('first'), second: length('second') })
}

// Into the frame that begins there: films write times down to the millisecond only.
export const inside = 0.002

/** Brings a film to the instant, or as near as its moment comes. */
export async function place(duo: DuoState, side: Side): Promise<void> {
  const film = duo.films[side]
  if (film) await jumpTo(film, timeOf(duo).place(side, duo.time) + inside)
}
