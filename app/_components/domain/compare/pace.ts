/** How a film runs beside the one that leads, and how it should. Seconds of the film; `pace` is seconds of it in one. */
export interface Beside {
  readonly at: number
  readonly target: number
  readonly pace: number
}

/** What to do about it: go on at a pace, or jump. */
export type Correction =
  | { readonly kind: 'pace'; readonly pace: number }
  | { readonly kind: 'seek'; readonly to: number }

// Chromium plays no slower and no faster than this.
const [slowest, fastest] = [1 / 16, 16]
const playable = (pace: number): number => Math.min(fastest, Math.max(slowest, pace))

/** What is known of the film and of the page, in seconds. */
interface Means {
  /** How long a frame of the film is shown. */
  readonly frame: number
  /** How long a jump lasted of late. */
  readonly jump: number
  /** How long it may be until the page gets to look at the film again. */
  readonly turn: number
}

/**
 * How a film gets back to where it should be. Less than a quarter of a frame is left alone. A small drift is made up within a
 * fifth of a second by another pace, since a jump shows nothing for several frames; a larger one is jumped over. On a page that
 * seldom gets its turn it is made up more slowly: a pace that nobody takes back in time would carry the film past its place.
 */
export function correct({ at, target, pace }: Beside, { frame, jump, turn }: Means): Correction {
  const drift = at - target
  if (Math.abs(drift) > Math.max(6 * frame, 0.1) || pace < slowest) {
    if (Math.abs(drift) <= frame) return { kind: 'pace', pace: playable(pace) }
    return { kind: 'seek', to: target + jump * pace }
  }
  if (Math.abs(drift) < frame / 4) return { kind: 'pace', pace: playable(pace) }
  const made = drift / Math.max(0.2, 2 * turn)
  return { kind: 'pace', pace: playable(pace - Math.max(-pace, made)) }
}
