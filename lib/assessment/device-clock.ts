import type { Instant } from './time'

// A phone that is a little off keeps its own order; one that is far off is put right by what was measured when it sent.
const tolerance = 120_000

/**
 * When a dive happened in the programme's time: the device's clock, corrected by `offset` (programme minus device, measured
 * when the device sent it) where that is more than two minutes. Milliseconds.
 */
export const programmeInstant = (device: Instant, offset: number): Instant =>
  Math.abs(offset) > tolerance ? device + offset : device

/** Dated after it was received, even corrected: the device's clock was moved in between. */
export const isFutureDated = (attemptedAt: Instant, receivedAt: Instant): boolean =>
  attemptedAt > receivedAt + tolerance
