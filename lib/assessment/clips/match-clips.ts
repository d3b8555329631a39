import type { Instant } from '../time'

/** An attempt that waits: the clip number that its coach saw, and when she marked it, in the programme's time. */
export interface Waiting {
  readonly attempt: string
  readonly clip: number
  readonly at: Instant
}

/** A clip of one camera: `start` and `end` by the camera's clock, milliseconds; null where they were not given. */
export interface Clip {
  readonly line: number
  readonly clip: number | null
  readonly start: Instant | null
  readonly end: Instant | null
  /** The link names a range of its own, so that it is of one dive. */
  readonly ranged: boolean
}

/** Why nothing is proposed where something was found. */
export type Doubtful = 'several clips' | 'several dives' | 'time disagrees' | 'number differs' | 'clock unknown'

/** What is proposed for one attempt. Only `number` and `time` are proposals; `unclear` is for the coach to choose. */
export type Match =
  | { readonly attempt: string; readonly by: 'number' | 'time'; readonly line: number }
  | { readonly attempt: string; readonly by: 'unclear'; readonly why: Doubtful; readonly lines: readonly number[] }
  | { readonly attempt: string; readonly by: 'none' }

const second = 1000
/** A mark may come so long before its clip begins, or its clock be so far off. */
export const before = 15 * second
/** A mark may come so long after its clip ended. */
export const after = 35 * second
/** A clip without an end is taken to be as long as this at most. */
export const longest = 60 * second

/** A clip on the programme's time line: from where to where it runs, and until when a mark may belong to it. */
interface Span {
  readonly clip: Clip
  readonly from: Instant
  readonly to: Instant
  readonly reach: Instant
}

function spansOf(clips: readonly Clip[], behind: number): Span[] {
  const timed = clips
    .flatMap((clip) => (clip.start === null ? [] : [{ clip, from: clip.start + behind }]))
    .sort((a, b) => a.from - b.from || a.clip.line - b.clip.line)
  return timed.map(({ clip, from }, index) => {
    const next = timed[index + 1]?.from ?? Number.POSITIVE_INFINITY
    if (clip.end === null) {
      const to = Math.min(from + longest, next)
      return { clip, from, to, reach: Math.min(from + longest, next + before) }
    }
    const to = clip.end + behind
    return { clip, from, to, reach: Math.max(to, Math.min(to + after, next + before)) }
  })
}

const isNear = ({ from, reach }: Span, at: Instant): boolean => at >= from - before && at <= reach
/** Of a clip whose number is known: one without an end may film on until the next begins. */
const mayHold = (span: Span, next: Instant, at: Instant): boolean =>
  isNear(span, at) || (span.clip.end === null && at >= span.from && at <= next + before)

const isLong = ({ clip, from, to }: Span): boolean => clip.end !== null && to - from > longest

const unclear = (attempt: string, why: Doubtful, clips: readonly { readonly line: number }[]): Match => ({
  attempt,
  by: 'unclear',
  why,
  lines: [...new Set(clips.map(({ line }) => line))].sort((a, b) => a - b),
})

/** Those with a clip of their number in the list. */
function byNumber(waiting: readonly Waiting[], clips: readonly Clip[], spans: readonly Span[]): Match[] {
  return waiting.flatMap(({ attempt, clip: number, at }): Match[] => {
    const clip = clips.find((one) => one.clip === number)
    if (!clip) return []
    const dives = waiting.filter((other) => other.clip === number).length
    if (dives > 1 && (clip.start === null || clip.ranged)) return [unclear(attempt, 'several dives', [clip])]
    const index = spans.findIndex((span) => span.clip === clip)
    const span = spans[index]
    if (span && !mayHold(span, spans[index + 1]?.from ?? Number.POSITIVE_INFINITY, at)) {
      const near = spans.filter((other) => isNear(other, at)).map((other) => other.clip)
      return [unclear(attempt, 'time disagrees', [clip, ...near])]
    }
    return [{ attempt, by: 'number', line: clip.line }]
  })
}

/** The others: each by the one clip that its mark falls into or near, and that no number claims. */
function byTime(waiting: readonly Waiting[], spans: readonly Span[]): Match[] {
  const found = waiting.map(({ attempt, at }) => ({ attempt, at, near: spans.filter((span) => isNear(span, at)) }))
  return found.map(({ attempt, at, near }): Match => {
    const [span] = near
    const clips = near.map(({ clip }) => clip)
    if (!span) return { attempt, by: 'none' }
    if (near.length > 1) return unclear(attempt, 'several clips', clips)
    // The deck and the list both number it, and not alike: one of them has miscounted.
    if (span.clip.clip !== null) return unclear(attempt, 'number differs', clips)
    const alone = found.filter((other) => other.near.includes(span)).length === 1
    const inside = at >= span.from - before && at <= span.to
    if (alone || (isLong(span) && inside && !span.clip.ranged)) return { attempt, by: 'time', line: span.clip.line }
    return unclear(attempt, 'several dives', clips)
  })
}

/**
 * Proposes a clip for each attempt: by clip number first, else by time. `behind` is what the camera's clock is behind the
 * programme's, milliseconds. Each attempt comes once, in the order of their marks; what could be two things is `unclear` and
 * never proposed. The order of either list changes nothing.
 */
export function matchClips(waiting: readonly Waiting[], clips: readonly Clip[], behind: number): Match[] {
  const ordered = [...waiting].sort((a, b) => a.at - b.at || (a.attempt < b.attempt ? -1 : 1))
  const spans = spansOf(clips, behind)
  const numbered = byNumber(ordered, clips, spans)
  const known = new Set(numbered.map(({ attempt }) => attempt))
  const claimed = new Set(numbered.flatMap((match) => (match.by === 'number' ? [match.line] : [])))
  const rest = byTime(
    ordered.filter(({ attempt }) => !known.has(attempt)),
    spans.filter(({ clip }) => !claimed.has(clip.line)),
  )
  const all = new Map([...numbered, ...rest].map((match) => [match.attempt, match]))
  return ordered.map(({ attempt }) => all.get(attempt) ?? { attempt, by: 'none' })
}
