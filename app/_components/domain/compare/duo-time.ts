import { type Span, shows, type TimeMap, wholeSpan, within } from './time-map'

export const sides = ['first', 'second'] as const
export type Side = (typeof sides)[number]
type OfBoth<Value> = Readonly<Record<Side, Value>>

/** How the films run beside each other; an `end` of null is the film's own. */
export interface Timing {
  readonly map: TimeMap
  readonly spans: OfBoth<{ readonly start: number; readonly end: number | null }>
}

// Seconds to show of a film that does not say how long it is.
const endless = 600

// What the way to the other film and back may lose.
const lost = 1e-6

/** What a moment shows of a film: no more than the film has. `length` is null where there is no film, and not finite where it does not say. */
function spanOf({ start, end }: Timing['spans'][Side], length: number | null): Span {
  if (length === null) return { start, end: end ?? start }
  const last = Number.isFinite(length) ? length : (end ?? start + endless)
  return { start: Math.min(start, last), end: Math.min(end ?? last, last) }
}

/**
 * The arithmetic of two films on one time, that of the first, in seconds. `lengths` are those of the films: null while one is
 * not there, and not a finite number for one that does not say how long it is.
 */
export function duoTime({ map, spans }: Timing, lengths: OfBoth<number | null>) {
  const is = (side: Side): boolean => lengths[side] !== null
  const span: OfBoth<Span> = {
    first: spanOf(spans.first, lengths.first),
    second: spanOf(spans.second, lengths.second),
  }
  const timeIn = (side: Side, time: number): number => (side === 'first' ? time : map.toSecond(time))
  const timeFrom = (side: Side, of: number): number => (side === 'first' ? of : map.toFirst(of))
  const second: Span = { start: map.toFirst(span.second.start), end: map.toFirst(span.second.end) }
  const whole: Span =
    is('first') && is('second') ? wholeSpan(map, span.first, span.second) : is('second') ? second : span.first
  const shown = (side: Side, time: number): boolean => is(side) && shows(span[side], timeIn(side, time) + lost)
  return {
    /** What each moment shows of its film, in seconds of that film. */
    span,
    /** All that either shows. */
    whole,
    timeIn,
    timeFrom,
    /** Seconds of a film for one of the first, at an instant. */
    slope: (side: Side, time: number): number => (side === 'first' ? 1 : map.slopeAt(time)),
    /** Whether a film shows an instant, rather than being held at its first or last frame, or not there. */
    shown,
    /** The film that the other keeps beside: the first that shows the instant, else the first that is there. */
    leader: (time: number): Side | null => sides.find((side) => shown(side, time)) ?? sides.find(is) ?? null,
    /** The instant of a film that comes nearest to an instant. */
    place: (side: Side, time: number): number => within(span[side], timeIn(side, time)),
    /** Where to play on when no film shows an instant: where the next one begins, and after the last at the start of all. */
    onwards: (time: number): number => {
      const begins = sides.filter(is).map((side) => timeFrom(side, span[side].start))
      const next = Math.min(...begins.filter((start) => start > time))
      return next < whole.end ? next : whole.start
    },
  }
}

export type DuoTime = ReturnType<typeof duoTime>
