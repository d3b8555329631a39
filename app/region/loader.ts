import { notFound } from 'next/navigation'
import { type Scope, scopeOf } from '@/lib/access/scope'
import { requireReviewer } from '@/lib/access/session'
import { sayWaitsFor } from '@/lib/assessment/readiness/say-waits-for'
import { stepName, targetName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { type DiverStanding, readStandings } from '@/lib/assessment/store/standings'
import { levelTarget } from '@/lib/assessment/target-hold'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { type Place, placeFacts, places } from '@/lib/curriculum/place'
import { systemClock } from '@/lib/platform/clock'
import { ageBandName, ageBands } from '@/lib/reports/age-band'
import { diversIn, movesIn, type RegionFilter, waitIn } from '@/lib/reports/filter'
import { askedSteps } from '@/lib/reports/listed'
import { type DiverOnPathway, type Figure, placeDiver } from '@/lib/reports/pathway'
import { type Query, type RegionQuery, readRegionQuery, writeQuery } from '@/lib/reports/query'
import { readLeavers } from '@/lib/reports/store/leavers'
import { type CountRow, levelTable, moveTable, narrowed } from '@/lib/reports/tables'
import { countWaits, type Wait } from '@/lib/reports/waits'

/** A value of a choice, and how it is read. */
export interface Choice {
  readonly value: string
  readonly label: string
}

/** Everybody in the programme, placed on the pathway: what the region's pages and downloads count. */
export interface Counted {
  readonly programme: string
  readonly scope: Scope
  readonly curriculum: Curriculum
  readonly words: Words
  readonly standings: ReadonlyMap<string, DiverStanding>
  readonly divers: readonly DiverOnPathway[]
  readonly clubs: readonly Choice[]
  /** Clubs in which the reader coaches. */
  readonly own: readonly string[]
}

/** The region as of now, for the programme's reviewers; to anybody else it does not exist. */
export async function loadCounted(): Promise<Counted> {
  const actor = await requireReviewer()
  const scope = scopeOf(actor, systemClock())
  const { curriculum, divers } = await readStandings(scope)
  const today = dayIn(scope.at, scope.zone)
  const names = new Map(divers.map((diver) => [diver.club, diver.clubName]))
  return {
    programme: actor.programme.name,
    scope,
    curriculum,
    words: { curriculum, today },
    standings: new Map(divers.map((diver) => [diver.id, diver])),
    divers: divers.map((diver) => placeDiver(curriculum, diver, today)),
    clubs: [...names].map(([value, label]) => ({ value, label })).sort((a, b) => a.label.localeCompare(b.label)),
    own: actor.clubs.map(({ club }) => club),
  }
}

/** A number, and the address of the list that it is the length of. */
export interface Count {
  readonly count: number
  readonly href: string
}

/** A table of counts as it is drawn. */
export interface CountTable {
  readonly heads: readonly string[]
  readonly columns: readonly { readonly label: string; readonly sortHref: string; readonly sorted: boolean }[]
  readonly rows: readonly { readonly labels: readonly string[]; readonly cells: readonly Count[] }[]
  /** Null where a diver is counted in several rows. */
  readonly totals: readonly number[] | null
}

/** Something that is waited for, as it is read. */
export interface WaitLine {
  readonly says: string
  readonly waiting: Count
  readonly heldUp: Count
}

export interface RegionPage {
  readonly programme: string
  readonly query: RegionQuery
  readonly total: number
  readonly shown: number
  readonly ready: number
  readonly choices: Readonly<Record<keyof RegionFilter, readonly Choice[]>>
  readonly levels: CountTable
  readonly moves: CountTable
  readonly levelWaits: readonly WaitLine[]
  readonly moveWaits: readonly WaitLine[]
  readonly leavers: readonly { readonly club: string; readonly count: number }[]
  readonly exports: readonly { readonly href: string; readonly label: string }[]
}

type Column = Figure | 'divers' | 'level to review'

const levelColumns: readonly (readonly [Column, string])[] = [
  ['divers', 'divers'],
  ['ready', 'ready'],
  ['near', 'near'],
  ['held up', 'held up'],
  ['on the way', 'on the way'],
  ['stood down', 'stood down'],
  ['held', 'has them all'],
  ['level to review', 'to review'],
]
const moveColumns: readonly (readonly [Column, string])[] = [
  ['ready', 'ready'],
  ['near', 'near'],
  ['held up', 'held up'],
  ['on the way', 'on the way'],
  ['stood down', 'stood down'],
  ['to review', 'to review'],
  ['held', 'moved'],
]

const mostWaits = 8
const leaverDays = 365

/** A level held as it is read. */
export const levelLabel = (level: string, curriculum: Curriculum): string =>
  level === 'none' ? 'no level yet' : targetName(levelTarget(level), { curriculum })

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** What a row of a table stands for, as it is read. */
export function rowLabel({ narrows }: Pick<CountRow, 'narrows'>, { clubs, curriculum }: Counted): string | null {
  if (narrows.club) return clubs.find(({ value }) => value === narrows.club)?.label ?? 'a club'
  if (narrows.age) return ageBandName[narrows.age]
  return narrows.level ? levelLabel(narrows.level, curriculum) : null
}

/** A board move as a row of its own: "To 3 m, inward". */
export const moveLabel = (move: TargetKey, curriculum: Curriculum): string =>
  capital(stepName(move, { curriculum }).replace(/^the move /, ''))

const filterFields = (filter: RegionFilter): Record<string, string | null> => ({ ...filter })

const listHref = (filter: RegionFilter, fields: Record<string, string | null>): string =>
  `/region/list?${writeQuery({ ...filterFields(filter), ...fields })}`

const inColumn = (row: CountRow, column: Column): readonly string[] =>
  column === 'divers' ? row.divers : column === 'level to review' ? row.toReview : (row.figures.get(column) ?? [])

function tableOf(counted: Counted, query: RegionQuery, rows: readonly CountRow[]): CountTable {
  const { filter, by, sort } = query
  const ofMoves = rows[0]?.move != null
  const columns = ofMoves ? moveColumns : levelColumns
  const sorted = sort ? [...rows].sort((a, b) => inColumn(b, sort).length - inColumn(a, sort).length) : rows
  const groupHead = by === 'club' ? 'Club' : by === 'age' ? 'Age this year' : 'Level held'
  const address = (figure: Column | null) => `/region?${writeQuery({ ...filterFields(filter), by, sort: figure })}`
  return {
    heads: ofMoves ? (by === 'step' ? ['Board move'] : [groupHead, 'Board move']) : [groupHead],
    columns: columns.map(([figure, label]) => ({
      label,
      sortHref: address(sort === figure ? null : figure),
      sorted: sort === figure,
    })),
    rows: sorted.map((row) => ({
      labels: [rowLabel(row, counted), row.move && moveLabel(row.move, counted.curriculum)].filter(
        (one) => one !== null,
      ),
      cells: columns.map(([figure]) => ({
        count: inColumn(row, figure).length,
        href: listHref(narrowed(filter, row), { of: row.move ?? 'level', figure }),
      })),
    })),
    totals: ofMoves
      ? null
      : columns.map(([figure]) => rows.reduce((sum, row) => sum + inColumn(row, figure).length, 0)),
  }
}

function waitLine({ code, what, divers, heldUp }: Wait, of: string, filter: RegionFilter, words: Words): WaitLine {
  const href = (figure: Figure | null) => listHref(filter, { of, figure, waits: code })
  return {
    says: capital(sayWaitsFor(what, words)),
    waiting: { count: divers.length, href: href(null) },
    heldUp: { count: heldUp.length, href: href('held up') },
  }
}

function choicesIn({ curriculum, clubs }: Counted): RegionPage['choices'] {
  const pairs = [...curriculum.pairs.values()]
  const families = [...new Set(pairs.map(({ skill }) => skill.family))]
  const taught = new Set<Place>(pairs.map(({ holding }) => holding.place))
  return {
    club: clubs,
    level: ['none', ...curriculum.levels.map(({ key }) => key)].map((value) => {
      return { value, label: capital(levelLabel(value, curriculum)) }
    }),
    age: ageBands.map((value) => ({ value, label: capital(ageBandName[value]) })),
    family: families.map((value) => ({ value, label: capital(value) })),
    place: places
      .filter((place) => taught.has(place))
      .map((value) => ({ value, label: capital(placeFacts[value].label) })),
  }
}

const exportsIn = (): RegionPage['exports'] =>
  [
    ['level', 'step', 'next level, by level held'],
    ['level', 'club', 'next level, by club'],
    ['level', 'age', 'next level, by age'],
    ['moves', 'step', 'board moves'],
    ['moves', 'club', 'board moves, by club'],
    ['moves', 'age', 'board moves, by age'],
    ['waits', 'step', 'what the next level waits for'],
  ].map(([of = '', by = '', label = '']) => ({ href: `/api/region/export?${writeQuery({ of, by })}`, label }))

/** The region's page as an address asks for it; one that names what does not exist is not found. */
export async function loadRegion(address: Query): Promise<RegionPage> {
  const counted = await loadCounted()
  const { curriculum, words } = counted
  const clubs = counted.clubs.map(({ value }) => value)
  const query = readRegionQuery(address, curriculum, clubs)
  if (query === null) notFound()
  const { filter, by } = query
  const divers = diversIn(curriculum, counted.divers, filter)
  const moves = movesIn(curriculum, filter)
  const subject = { curriculum, clubs, divers, filter }
  const waits = (asked: typeof moves | null) =>
    countWaits(askedSteps(divers, asked), (what) => waitIn(curriculum, filter, what))
      .slice(0, mostWaits)
      .map((wait) => waitLine(wait, asked === null ? 'level' : 'moves', filter, words))
  const left = (await readLeavers(counted.scope)).filter(
    ({ club, at }) => at > counted.scope.at - leaverDays * 86_400_000 && (filter.club === null || club === filter.club),
  )
  const isReady = (diver: DiverOnPathway) => [diver.next, ...diver.moves].some((step) => step?.figure === 'ready')
  return {
    programme: counted.programme,
    query,
    total: counted.divers.length,
    shown: divers.length,
    ready: divers.filter(isReady).length,
    choices: choicesIn(counted),
    levels: tableOf(counted, query, levelTable(subject, by)),
    moves: tableOf(counted, query, moveTable(subject, moves, by)),
    levelWaits: waits(null),
    moveWaits: waits(moves),
    leavers: counted.clubs
      .map(({ value, label }) => ({ club: label, count: left.filter(({ club }) => club === value).length }))
      .filter(({ count }) => count > 0),
    exports: exportsIn(),
  }
}
