import { type Measured, propagate, type Quantity } from './measured'

/** Standard fall, in metres a second squared; air resistance is left out. */
export const gravity = 9.81

/**
 * When the diver was in the air, in seconds of the film. Both ends are read the same way: the first frame without contact
 * with the board, the first frame in which the water is touched (`seenAt`).
 */
export interface Flight {
  readonly takeOff: Quantity
  readonly entry: Quantity
  /** How much lower the centre of mass is at the entry than at take-off, in metres: stated, not measured (`levelDrop`). */
  readonly drop: Quantity
}

/** What follows from a flight: seconds, metres a second, and metres that the centre of mass rises above where it left. */
export interface FlightMeasures {
  readonly time: Measured
  readonly takeOffSpeed: Measured
  readonly rise: Measured
  readonly entrySpeed: Measured
}

/**
 * The drop when the centre of mass is as high over the board at take-off as over the water at the entry: the board's height,
 * give or take `sd` metres for the diver's reach and for the board's own movement.
 */
export const levelDrop = (boardHeight: number, sd = 0.1): Quantity => ({ value: boardHeight, sd })

/** Upward speed at take-off (m/s) that keeps a body in the air for `time` seconds while it comes down `drop` metres in all. */
export const speedFor = (time: number, drop: number): number => (gravity * time ** 2 - 2 * drop) / (2 * time)

/** Metres that a body rises which leaves upwards at `speed` m/s; nothing when it leaves downwards. */
export const riseFor = (speed: number): number => Math.max(0, speed) ** 2 / (2 * gravity)

/** Speed (m/s) downwards after leaving upwards at `speed` and coming down `drop` metres. */
export const entryFor = (speed: number, drop: number): number => Math.sqrt(Math.max(0, speed ** 2 + 2 * gravity * drop))

/** Seconds in the air of a body that leaves upwards at `speed` m/s and comes down `drop` metres in all. */
export const timeFor = (speed: number, drop: number): number => (speed + entryFor(speed, drop)) / gravity

/** Take-off speed, rise and entry speed from the time in the air, by ballistics. Throws RangeError when it ends before it begins. */
export function measureFlight({ takeOff, entry, drop }: Flight): FlightMeasures {
  if (entry.value <= takeOff.value) throw new RangeError('the entry must be later than the take-off')
  const from = (of: (time: number, fallen: number) => number): Measured =>
    propagate([takeOff, entry, drop], ([left = 0, met = 0, fallen = 0]) => of(met - left, fallen))
  return {
    time: from((time) => time),
    takeOffSpeed: from(speedFor),
    rise: from((time, fallen) => riseFor(speedFor(time, fallen))),
    entrySpeed: from((time, fallen) => entryFor(speedFor(time, fallen), fallen)),
  }
}

/** What the highest point adds: the take-off speed without any stated drop (m/s), and the drop that the three times imply (m). */
export interface PeakMeasures {
  readonly takeOffSpeed: Measured
  readonly drop: Measured
}

/**
 * The same from the time of the highest point, which needs no stated drop but is hard to see: the error of `peak` is many frames'
 * worth. All three are when it happened: the frame in which a body is highest is as often too early as too late, the one in which
 * it is first seen off the board is half a frame too late (`happenedBefore`). Throws RangeError when the peak is not between
 * take-off and entry.
 */
export function measureByPeak({ takeOff, entry }: Omit<Flight, 'drop'>, peak: Quantity): PeakMeasures {
  if (!(takeOff.value < peak.value && peak.value < entry.value))
    throw new RangeError('the highest point must lie between the take-off and the entry')
  const inputs = [takeOff, peak, entry]
  return {
    takeOffSpeed: propagate(inputs, ([left = 0, top = 0]) => gravity * (top - left)),
    drop: propagate(inputs, ([left = 0, top = 0, met = 0]) => (gravity * ((met - top) ** 2 - (top - left) ** 2)) / 2),
  }
}
