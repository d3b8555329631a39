/** A number with the standard deviation of its error, in its own unit. */
export interface Quantity {
  readonly value: number
  readonly sd: number
}

/** A result with its 95 % interval, all in the unit that the measure names. */
export interface Measured extends Quantity {
  readonly low: number
  readonly high: number
}

const normal95 = 1.96

/** A value that is taken as it is. */
export const exactly = (value: number): Quantity => ({ value, sd: 0 })

/** The instant, in seconds, of something first seen in a frame: it happened anywhere within one frame's time (`frame`, in seconds). */
export const seenAt = (time: number, frame: number): Quantity => ({ value: time, sd: frame / Math.sqrt(12) })

/**
 * When something happened that is first seen in a frame: on average half a frame before it. For holding it against an instant
 * that is not read so; between two that are, the halves cancel and `seenAt` does.
 */
export const happenedBefore = (time: number, frame: number): Quantity => seenAt(time - frame / 2, frame)

/** The difference brought nearest to nought on a circle of the given period. */
export const wrap = (difference: number, period: number): number =>
  difference - period * Math.round(difference / period)

/**
 * What `of` makes of quantities whose errors are independent, with the error that they leave in it, to first order: each
 * quantity is moved a little and the change scaled to its standard deviation. `period` says that results lie on a circle.
 */
export function propagate(
  inputs: readonly Quantity[],
  of: (values: readonly number[]) => number,
  period?: number,
): Measured {
  const values = inputs.map(({ value }) => value)
  const moved = (index: number, by: number) => of(values.map((value, at) => (at === index ? value + by : value)))
  const share = 0.01
  const variance = inputs.reduce((sum, { sd }, index) => {
    if (sd === 0) return sum
    const change = moved(index, sd * share) - moved(index, -sd * share)
    return sum + ((period === undefined ? change : wrap(change, period)) / (2 * share)) ** 2
  }, 0)
  return measuredAs(of(values), Math.sqrt(variance))
}

/** A value and its standard deviation with the 95 % interval, cut to what is possible. */
export function measuredAs(value: number, sd: number, least = -Infinity, most = Infinity): Measured {
  return { value, sd, low: Math.max(least, value - normal95 * sd), high: Math.min(most, value + normal95 * sd) }
}
