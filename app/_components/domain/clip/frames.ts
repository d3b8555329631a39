/** Speeds that a clip plays at, as shares of the true one. */
export const speeds: readonly number[] = [1, 1 / 2, 1 / 4, 1 / 8]

/** A speed as coaches say it: `1/8`. */
export const saySpeed = (speed: number): string => (speed === 1 ? 'full speed' : `1/${Math.round(1 / speed)}`)

/** Seconds as shown beside a clip: thousandths, so that frames can be told apart. */
export const saySeconds = (seconds: number): string => `${seconds.toFixed(3)} s`

/**
 * The time of one frame, in seconds, from the times of frames that were shown one after the other, or null when they do not
 * tell: frames may have been passed over, so that the shortest step is the one to trust.
 */
export function frameTimeOf(shown: readonly number[]): number | null {
  const steps = shown.slice(1).map((time, index) => time - (shown[index] ?? time))
  const forward = steps.filter((step) => step > 0.002)
  return forward.length < 3 ? null : Math.min(...forward)
}

/**
 * Where to seek so that the frame after or before the shown one appears: into its middle, since a seek to a frame's own time
 * shows the one before it in a third of all cases. `tries` reaches further where frames are longer than thought.
 */
export function seekFor(shown: number, by: 1 | -1, frame: number, tries: number): number {
  return by === 1 ? shown + (1.5 + tries) * frame : Math.max(0, shown - (0.5 + tries) * frame)
}

/** Whether a frame at that time lies behind the end of a range [start, end). */
export const isPast = (time: number, end: number | null): boolean => end !== null && time >= end - 0.001
