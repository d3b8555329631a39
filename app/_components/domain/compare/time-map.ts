/** An instant that both films show: where it is in the first and in the second, in seconds of each film. */
export interface Anchor {
  readonly first: number
  readonly second: number
}

/** A part of a film, [start, end), in its seconds. */
export interface Span {
  readonly start: number
  readonly end: number
}

/**
 * Which instant of the second film belongs to which of the first: rising everywhere, straight between anchors, and at the
 * pace of the clock before the first and after the last of them.
 */
export interface TimeMap {
  readonly toSecond: (first: number) => number
  readonly toFirst: (second: number) => number
  /** Seconds of the second film for one of the first, from `first` on. */
  readonly slopeAt: (first: number) => number
}

// Marks closer than the shortest time that a film writes down are one.
const apart = 0.001

/** The anchors in the order of time, without those that come no later than one before them in either film. */
export function inOrder(anchors: readonly Anchor[]): Anchor[] {
  const kept: Anchor[] = []
  for (const next of [...anchors].sort((a, b) => a.first - b.first || a.second - b.second)) {
    const last = kept.at(-1)
    if (!last || (next.first - last.first >= apart && next.second - last.second >= apart)) kept.push(next)
  }
  return kept
}

/** The map through the anchors; one anchor lays the films beside each other on one clock. Throws RangeError without any. */
export function timeMap(anchors: readonly Anchor[]): TimeMap {
  const through = inOrder(anchors)
  const [begin, end] = [through[0], through.at(-1)]
  if (!begin || !end) throw new RangeError('two films need an instant in common')
  const way = (from: keyof Anchor, to: keyof Anchor) => (time: number) => {
    if (time < begin[from]) return begin[to] + (time - begin[from])
    if (time >= end[from]) return end[to] + (time - end[from])
    const after = through.findIndex((anchor) => anchor[from] > time)
    const [a, b] = [through[after - 1] ?? begin, through[after] ?? end]
    return a[to] + ((time - a[from]) * (b[to] - a[to])) / (b[from] - a[from])
  }
  return {
    toSecond: way('first', 'second'),
    toFirst: way('second', 'first'),
    slopeAt: (time) => {
      const after = through.findIndex((anchor) => anchor.first > time)
      const [a, b] = [through[after - 1], through[after]]
      return a && b ? (b.second - a.second) / (b.first - a.first) : 1
    },
  }
}

/** The second film moved by hand against the first, by so many of its seconds: positive shows it further on. */
export function shifted(map: TimeMap, by: number): TimeMap {
  return {
    ...map,
    toSecond: (first) => map.toSecond(first) + by,
    toFirst: (second) => map.toFirst(second - by),
  }
}

/** All that either film shows, in seconds of the first. */
export const wholeSpan = (map: TimeMap, first: Span, second: Span): Span => ({
  start: Math.min(first.start, map.toFirst(second.start)),
  end: Math.max(first.end, map.toFirst(second.end)),
})

/** The instant nearest to `time` that a film shows, its end left out by less than a frame. */
export const within = ({ start, end }: Span, time: number): number =>
  Math.min(Math.max(time, start), Math.max(start, end - apart))

/** Whether a film shows an instant, rather than being held at its first or last frame. */
export const shows = ({ start, end }: Span, time: number): boolean => time >= start && time < end - apart
