import type { TargetKey } from '../assessment/record'
import { families } from '../curriculum/dives/model'
import type { Curriculum } from '../curriculum/edition/curriculum'
import { places } from '../curriculum/place'
import { ageBands } from './age-band'
import { everybody, movesIn, type RegionFilter } from './filter'
import { type Figure, figures } from './pathway'
import { type Grouping, groupings } from './tables'

/** What stands after the question mark of an address, as the framework hands it on. */
export type Query = Readonly<Record<string, string | string[] | undefined>>

/** The region as an address asks for it. */
export interface RegionQuery {
  readonly filter: RegionFilter
  readonly by: Grouping
  /** The figure by which rows are sorted, most first; null: their own order. */
  readonly sort: Figure | 'divers' | null
}

/** The list behind one number: of the next level or a board move, by figure or by what is waited for. */
export interface ListQuery {
  readonly filter: RegionFilter
  /** Null: the next level. */
  readonly moves: readonly TargetKey[] | null
  /** 'level to review': beside how she stands to the next. */
  readonly figure: Figure | 'divers' | 'level to review' | null
  /** A code of what is waited for, within the figure where both are asked. */
  readonly waits: string | null
  readonly page: number
}

/** One of the known values of a field; null where the field is empty or absent; undefined where it is something else. */
function chosen<Value extends string>(query: Query, name: string, known: readonly Value[]): Value | null | undefined {
  const written = query[name]
  if (written === undefined || written === '') return null
  return known.find((value) => value === written)
}

/** The filter that an address asks for; null when it names what does not exist. */
export function readFilter(query: Query, curriculum: Curriculum, clubs: readonly string[]): RegionFilter | null {
  const club = chosen(query, 'club', clubs)
  const level = chosen(query, 'level', ['none', ...curriculum.levels.map(({ key }) => key)])
  const age = chosen(query, 'age', ageBands)
  const family = chosen(query, 'family', [...families, 'safety'] as const)
  const place = chosen(query, 'place', places)
  if (club === undefined || level === undefined || age === undefined || family === undefined || place === undefined)
    return null
  return { club, level, age, family, place }
}

/** The region that an address asks for; null when it names what does not exist. */
export function readRegionQuery(query: Query, curriculum: Curriculum, clubs: readonly string[]): RegionQuery | null {
  const filter = readFilter(query, curriculum, clubs)
  const by = chosen(query, 'by', groupings)
  const sort = chosen(query, 'sort', [...figures, 'divers'] as const)
  return filter === null || by === undefined || sort === undefined ? null : { filter, by: by ?? 'step', sort }
}

/** The list that an address asks for; null when it names what does not exist. */
export function readListQuery(query: Query, curriculum: Curriculum, clubs: readonly string[]): ListQuery | null {
  const filter = readFilter(query, curriculum, clubs)
  const of = chosen(query, 'of', ['level', 'moves', ...movesIn(curriculum, everybody)] as const)
  const figure = chosen(query, 'figure', [...figures, 'divers', 'level to review'] as const)
  const waits = typeof query.waits === 'string' && query.waits !== '' ? query.waits : null
  if (filter === null || !of || figure === undefined || (figure === null && waits === null)) return null
  const page = Math.max(1, Math.floor(Number(query.page)) || 1)
  const moves = of === 'level' ? null : movesIn(curriculum, filter).filter((move) => of === 'moves' || of === move)
  return { filter, moves, figure, waits, page }
}

/** Fields as they stand in an address; those that say nothing are left out. */
export function writeQuery(fields: Readonly<Record<string, string | number | null>>): string {
  const said = Object.entries(fields).flatMap(([name, value]) => (value === null ? [] : [[name, String(value)]]))
  return new URLSearchParams(said).toString()
}
