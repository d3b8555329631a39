import { type Measured, propagate, type Quantity } from './measured'

/** One quantity in two films: each with its 95 % interval, and the second less the first. */
export interface Difference {
  readonly first: Measured
  readonly second: Measured
  readonly by: Measured
  /** The two intervals have nothing in common: the films can tell the difference. */
  readonly told: boolean
}

/** Whether two intervals have a value in common; ends count. */
export const overlap = (one: Measured, other: Measured): boolean => one.low <= other.high && other.low <= one.high

/**
 * The difference of a quantity between two films whose errors are independent, in its own unit. `period` says that it lies on
 * a circle, such as an angle of 360 degrees.
 */
export function differenceOf(first: Measured, second: Measured, period?: number): Difference {
  const less = ([one = 0, other = 0]: readonly number[]) => {
    const by = other - one
    return period === undefined ? by : by - period * Math.round(by / period)
  }
  const by = propagate([first, second], less, period)
  const turns = period === undefined ? 0 : second.value - first.value - by.value
  const beside = { ...second, low: second.low - turns, high: second.high - turns }
  return { first, second, by, told: !overlap(first, beside) }
}

/** The time between two instants of one film, in seconds; each is known to within a frame (`seenAt`). */
export const timeBetween = (from: Quantity, to: Quantity): Measured =>
  propagate([from, to], ([start = 0, end = 0]) => end - start)
