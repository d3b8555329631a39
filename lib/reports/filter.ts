import type { WaitsFor } from '../assessment/readiness/waits-for'
import type { TargetKey } from '../assessment/record'
import { moveTarget } from '../assessment/target-hold'
import type { Family } from '../curriculum/dives/model'
import type { Curriculum } from '../curriculum/edition/curriculum'
import type { Place } from '../curriculum/place'
import type { AgeBand } from './age-band'
import type { DiverOnPathway } from './pathway'

/** What is looked at; null: all. Club, level and age choose divers; family and place choose board moves and what is waited for. */
export interface RegionFilter {
  readonly club: string | null
  /** Level held, by key; 'none' for those who hold none yet. */
  readonly level: string | null
  readonly age: AgeBand | null
  readonly family: Family | 'safety' | null
  readonly place: Place | null
}

/** Nothing is left out. */
export const everybody: RegionFilter = { club: null, level: null, age: null, family: null, place: null }

/** The key of the level that a diver holds, or 'none'. */
export const levelHeld = (curriculum: Curriculum, diver: Pick<DiverOnPathway, 'level'>): string =>
  curriculum.levels[diver.level]?.key ?? 'none'

const fits = <Value>(asked: Value | null, value: Value): boolean => asked === null || asked === value

/** The divers that a filter looks at. */
export const diversIn = (
  curriculum: Curriculum,
  divers: readonly DiverOnPathway[],
  filter: RegionFilter,
): DiverOnPathway[] =>
  divers.filter(
    (diver) =>
      fits(filter.club, diver.club) && fits(filter.level, levelHeld(curriculum, diver)) && fits(filter.age, diver.age),
  )

/** The board moves that a filter looks at, in the edition's order. */
export const movesIn = (curriculum: Curriculum, { family, place }: RegionFilter): TargetKey[] =>
  curriculum.boardMoves.filter((move) => fits<string>(family, move.family) && fits(place, move.to)).map(moveTarget)

/** Whether something that is waited for belongs to the family and place; what has neither belongs only where neither is asked. */
export function waitIn(curriculum: Curriculum, { family, place }: RegionFilter, what: WaitsFor): boolean {
  if (family === null && place === null) return true
  if (what.kind === 'decision') {
    const move = curriculum.boardMoves.find((one) => moveTarget(one) === what.target)
    return move !== undefined && fits<string>(family, move.family) && fits(place, move.to)
  }
  if (what.kind === 'list') return family === null && curriculum.events.get(what.event)?.place === place
  if (what.kind !== 'pair' && what.kind !== 'shortfall') return false
  const pair = curriculum.pairs.get(what.pair)
  return pair !== undefined && fits<string>(family, pair.skill.family) && fits(place, pair.holding.place)
}
