import type { Timing } from './duo-time'
import type { CompareOptions, Pace } from './options'
import { type Anchor, shifted, timeMap } from './time-map'

/** A frame that a coach marked: where a phase begins, or where something was measured. Seconds of the film. */
export interface FilmMark {
  readonly key: string
  readonly label: string
  readonly time: number
}

/** A mark that both films have, in seconds of each. */
export interface CommonMark extends Anchor {
  readonly key: string
  readonly label: string
}

/** The marks that both films have, in the order of the first. */
export const commonMarks = (first: readonly FilmMark[], second: readonly FilmMark[]): CommonMark[] =>
  [...first]
    .sort((a, b) => a.time - b.time)
    .flatMap(({ key, label, time }) => {
      const other = second.find((mark) => mark.key === key)
      return other ? [{ key, label, first: time, second: other.time }] : []
    })

/** The marks between which a diver is in the air. */
const flight = ['flight', 'entry']

/** What the second film can keep pace with. */
export function pacesFor(common: readonly CommonMark[]): Pace[] {
  const both = flight.every((key) => common.some((mark) => mark.key === key))
  return ['clock', ...(both ? (['flight'] as const) : []), ...(common.length > 1 ? (['phases'] as const) : [])]
}

/** The mark that both films are laid on; null for the beginning of both. Where it flies off the board, if nothing else is asked. */
export const markFor = (common: readonly CommonMark[], { at }: Pick<CompareOptions, 'at'>): CommonMark | null =>
  common.find(({ key }) => key === at) ?? common.find(({ key }) => key === 'flight') ?? common[0] ?? null

/** The timing of two films by the marks that both have, what both measured, and what a coach chose. */
export function timingFor(
  common: readonly CommonMark[],
  measured: readonly CommonMark[],
  spans: Timing['spans'],
  options: Pick<CompareOptions, 'at' | 'pace' | 'shift'>,
): Timing {
  const pace = pacesFor(common).includes(options.pace) ? options.pace : 'clock'
  const mark = markFor([...common, ...measured], options)
  const anchors: Record<Pace, readonly Anchor[]> = {
    clock: [mark ?? { first: spans.first.start, second: spans.second.start }],
    flight: common.filter(({ key }) => flight.includes(key)),
    phases: common,
  }
  return { map: shifted(timeMap(anchors[pace]), options.shift / 1000), spans }
}
