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

/**
 * How a film gets back to where it should be. Less than a quarter of a frame is left alone. A small drift is made up within a
 * fifth of a second by a little more or less pace, since a jump shows nothing for several frames; a larger one is jumped over.
 * `frame` is the time of one frame of the film; `jump` how long a jump lasted of late, in seconds of the clock.
 */
export function correct({ at, target, pace }: Beside, frame: number, jump: number): Correction {
  const drift = at - target
  if (Math.abs(drift) > Math.max(6 * frame, 0.1) || pace < slowest) {
    if (Math.abs(drift) <= frame) return { kind: 'pace', pace: playable(pace) }
    return { kind: 'seek', to: target + jump * pace }
  }
  if (Math.abs(drift) < frame / 4) return { kind: 'pace', pace: playable(pace) }
  const made = Math.min(pace / 2, Math.max(-pace / 2, drift / 0.2))
  return { kind: 'pace', pace: playable(pace - made) }
}
