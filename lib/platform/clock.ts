import { getEnv } from './env'

/** Milliseconds since 1970-01-01T00:00:00Z. Rules never call it: time reaches them as an argument. */
export type Clock = () => number

/**
 * A clock that showed `start` when the machine's clock showed `startedAt`, and goes on from there at the usual speed.
 * `start` null: the machine's own clock.
 */
export const clockFrom = (start: number | null, startedAt: number, machine: Clock): Clock =>
  start === null ? machine : () => start + (machine() - startedAt)

let clock: Clock | undefined

/**
 * The time now. The demo's season ends on a fixed day, so with the demo loaded the launcher passes PLUMBLINE_NOW
 * and the clock goes on from there: it is that day for as long as the demo is looked at, and it never runs backwards.
 */
export const systemClock: Clock = () => {
  clock ??= clockFrom(getEnv().now, performance.timeOrigin, Date.now)
  return clock()
}
