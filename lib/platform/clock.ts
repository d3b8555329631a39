/** Milliseconds since 1970-01-01T00:00:00Z. Rules never call it: time reaches them as an argument. */
export type Clock = () => number

/** The machine's clock. A programme's own time may be moved against it: see `programmeTime`. */
export const systemClock: Clock = Date.now
