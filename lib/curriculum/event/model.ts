import type { Tenths } from '../dives/components'
import type { Place } from '../place'

/** Where lists are entered: the boards that the difficulty tables speak of. */
export const eventPlaces = ['1m', '3m'] as const satisfies readonly Place[]
export type EventPlace = (typeof eventPlaces)[number]

/** One part of a list: so many dives, from at least so many families. */
export interface EventPart {
  readonly count: number
  readonly distinctFamilies: number
  /** Most that the difficulties of the part may add up to, inclusive; null: no limit. */
  readonly difficultyCap: Tenths | null
}

/** What a dive list is entered in, in one season: age bands and caps move from year to year. No dive number stands twice in a list. */
export interface Event {
  readonly key: string
  readonly title: string
  /** The calendar year in which it starts. */
  readonly season: number
  /** Whole years on 31 December of the season, both inclusive; null: no limit on that side. */
  readonly ageBand: { readonly from: number | null; readonly to: number | null }
  readonly place: EventPlace
  readonly parts: readonly EventPart[]
}
