import type { InPhase } from '../measure/compare-measures'
import { type Difference, differenceOf, timeBetween } from '../measure/difference'
import { seenAt } from '../measure/measured'
import type { Mark, MarkKey } from './mark'

/** The marks of one coach: of whoever marked most in the film; of several alike, of the one who asks. */
export function marksToUse(marks: readonly Mark[], me: string): readonly Mark[] {
  const of = (coach: string) => marks.filter((mark) => mark.coach === coach)
  const coaches = [...new Set(marks.map(({ coach }) => coach))]
  coaches.sort((a, b) => of(b).length - of(a).length || Number(b === me) - Number(a === me))
  return coaches[0] === undefined ? [] : of(coaches[0])
}

// A mark and a measure of one frame may differ by what rounding to a millisecond loses.
const rounded = 2

/**
 * The phase that an instant of a film lies in as a coach sees it, who may see it begin in another frame than others do: by that
 * coach's marks, and where one is missing by those to use. Null before the first of them.
 */
export function phaseAt(marks: readonly Mark[], { atMs, coach }: Pick<Mark, 'atMs' | 'coach'>): MarkKey | null {
  const own = marks.filter((mark) => mark.coach === coach)
  const seen = [...new Map([...marksToUse(marks, coach), ...own].map((mark) => [mark.key, mark])).values()]
  return seen.sort((a, b) => a.atMs - b.atMs).findLast((mark) => mark.atMs <= atMs + rounded)?.key ?? null
}

/** What coaches measured in a film, in the order given, each with the phase that its coach saw there. */
export const measuresInPhases = ({
  measures,
  marks,
}: {
  readonly measures: readonly (Omit<InPhase, 'phase'> & { readonly coach: string })[]
  readonly marks: readonly Mark[]
}): InPhase[] =>
  measures.map(({ taken, results, coach }) => {
    const [frame] = taken.kind === 'flight' ? [] : taken.frames
    return { taken, results, phase: frame ? phaseAt(marks, { atMs: frame.atMs, coach }) : null }
  })

/** The time from one mark to another in two films, and how they differ, in seconds. */
export interface TimeCompared {
  readonly from: MarkKey
  readonly to: MarkKey
  /** The phase that it is, when no other phase lies between the two marks. */
  readonly phase: MarkKey | null
  readonly time: Difference
}

/** Seconds of one frame where nobody knows: the longest that cameras in use have. From memory, no published source. */
export const longestFrame = 1 / 25

const instant = ({ atMs, frameUs }: Mark) => seenAt(atMs / 1000, frameUs === null ? longestFrame : frameUs / 1_000_000)

/**
 * The times between marks that both films have, in the order of the keys: each to the next one, then all of the flight and the
 * way to its highest point where those are not among them. Marks that run against the order are left out.
 */
export function compareTimes(
  first: readonly Mark[],
  second: readonly Mark[],
  keys: readonly MarkKey[],
): readonly TimeCompared[] {
  const find = (marks: readonly Mark[], key: MarkKey) => marks.find((mark) => mark.key === key)
  const phases: readonly MarkKey[] = keys.filter((key) => key !== 'highest point')
  const both = phases.filter((key) => find(first, key) && find(second, key))
  const next = both.slice(1).map((to, index): readonly [MarkKey, MarkKey] => [both[index] ?? to, to])
  const whole = ([['flight', 'entry'] as const, ['flight', 'highest point'] as const] as const).filter(
    ([from, to]) => !next.some(([a, b]) => a === from && b === to),
  )
  return [...next, ...whole].flatMap(([from, to]): TimeCompared[] => {
    const [a, b, c, d] = [find(first, from), find(first, to), find(second, from), find(second, to)]
    if (!a || !b || !c || !d || b.atMs <= a.atMs || d.atMs <= c.atMs) return []
    const time = differenceOf(timeBetween(instant(a), instant(b)), timeBetween(instant(c), instant(d)))
    return [{ from, to, phase: phases[phases.indexOf(from) + 1] === to ? from : null, time }]
  })
}
