import { notFound } from 'next/navigation'
import { counted as countOf, listed as listWords, midSentence, sentence } from '@/lib/assessment/readiness/grammar'
import { sayWaitsFor } from '@/lib/assessment/readiness/say-waits-for'
import type { StandingRow } from '@/lib/assessment/readiness/standing-row'
import { readWaitsFor } from '@/lib/assessment/readiness/waits-for'
import { dayName, stepName } from '@/lib/assessment/readiness/wording'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'
import { ageBandName } from '@/lib/reports/age-band'
import { listed, stepsOf } from '@/lib/reports/listed'
import type { Figure } from '@/lib/reports/pathway'
import { type ListQuery, type Query, readListQuery, writeQuery } from '@/lib/reports/query'
import { type Counted, levelLabel, loadCounted, moveLabel } from '../loader'

export interface ListedDiver {
  readonly href: string
  readonly name: string
  readonly margin: string
  readonly squads: string
  /** How she stands to each step that is asked about, a sentence each. */
  readonly says: readonly string[]
}

export interface RegionList {
  /** What the list is of: the number that led here, in words. */
  readonly title: string
  readonly backHref: string
  readonly rows: readonly ListedDiver[]
  readonly page: number
  readonly pages: number
  readonly total: number
  readonly pageHref: (page: number) => string
}

const pageSize = 25
const mostSaid = 3

const figureWords: Readonly<Record<NonNullable<ListQuery['figure']>, string | null>> = {
  divers: null,
  ready: 'ready',
  near: 'near',
  'held up': 'held up',
  'on the way': 'on the way',
  'stood down': 'stood down',
  'to review': 'to review',
  held: 'held',
  'level to review': 'with a level to review',
}

function waitsIn(code: string | null, { words }: Counted): string | null {
  if (code === null) return null
  try {
    return `waiting for ${midSentence(sayWaitsFor(readWaitsFor(code), words))}`
  } catch (error) {
    if (error instanceof RangeError) notFound()
    throw error
  }
}

const movesTitle = (moves: NonNullable<ListQuery['moves']>, curriculum: Curriculum): string => {
  const [only] = moves
  return only && moves.length === 1 ? moveLabel(only, curriculum) : 'Board moves'
}

/** "The next level · held up · Harrow Point · 10 and 11". */
function titleOf({ filter, moves, figure, waits }: ListQuery, counted: Counted): string {
  const { curriculum, clubs } = counted
  const parts = [
    moves === null ? 'The next level' : movesTitle(moves, curriculum),
    figure && figureWords[figure],
    waitsIn(waits, counted),
    filter.club && clubs.find(({ value }) => value === filter.club)?.label,
    filter.level && `level held: ${levelLabel(filter.level, curriculum)}`,
    filter.age && `age this year: ${ageBandName[filter.age]}`,
    filter.family,
    filter.place && placeFacts[filter.place].label,
  ]
  return parts.filter(Boolean).join(' · ')
}

const stands: Readonly<Record<Exclude<Figure, 'ready' | 'held'>, string>> = {
  near: 'near to',
  'held up': 'held up on the way to',
  'on the way': 'on the way to',
  'stood down': 'stood down on the way to',
  'to review': 'to review:',
}

/** "Near to Bearings, two clean attempts away: waits for …". What a kept row says of a step, as a sentence. */
function sayStep(figure: Figure, row: StandingRow, { words }: Counted): string {
  const name = stepName(row.target, words)
  if (figure === 'ready')
    return sentence(`ready for ${name}${row.readySince === null ? '' : ` since ${dayName(row.readySince, words)}`}`)
  if (figure === 'held') return sentence(`has ${name}`)
  const said = row.waitsFor.slice(0, mostSaid).map((what) => midSentence(sayWaitsFor(what, words)))
  const more = row.waitsFor.length - said.length
  const waits = [...said, ...(more > 0 ? [`${countOf(more, 'more thing')}`] : [])]
  const far = row.attemptsLeft
    ? `, ${row.leftExact ? '' : 'at most '}${countOf(row.attemptsLeft, 'clean attempt')} away`
    : ''
  return sentence(`${stands[figure]} ${name}${far}${waits.length > 0 ? `; waits for ${listWords(waits)}` : ''}`)
}

/** The divers behind one number of the region; an address that names no figure is not found. Reads rows and evaluates nobody. */
export async function loadList(address: Query): Promise<RegionList> {
  const counted = await loadCounted()
  const { curriculum, standings } = counted
  const query = readListQuery(
    address,
    curriculum,
    counted.clubs.map(({ value }) => value),
  )
  if (query === null) notFound()
  const all = listed(curriculum, counted.divers, query).flatMap((placed) => {
    const diver = standings.get(placed.id)
    return diver ? [{ placed, diver }] : []
  })
  all.sort(
    (a, b) =>
      a.diver.familyName.localeCompare(b.diver.familyName) || a.diver.givenName.localeCompare(b.diver.givenName),
  )
  const fields = {
    ...query.filter,
    of: query.moves === null ? 'level' : String(address.of),
    figure: query.figure,
    waits: query.waits,
  }
  return {
    title: titleOf(query, counted),
    backHref: `/region?${writeQuery({ ...query.filter })}`,
    rows: all.slice((query.page - 1) * pageSize, query.page * pageSize).map(({ placed, diver }) => ({
      href: `/desk/divers/${diver.id}`,
      name: `${diver.givenName} ${diver.familyName}`,
      margin: diver.clubName,
      squads: diver.squads.join(', '),
      says: stepsOf(placed, query.moves).flatMap(({ figure, target }) => {
        const row = diver.rows.find((one) => one.target === target)
        return row ? [sayStep(figure, row, counted)] : []
      }),
    })),
    page: query.page,
    pages: Math.max(1, Math.ceil(all.length / pageSize)),
    total: all.length,
    pageHref: (page) => `/region/list?${writeQuery({ ...fields, page })}`,
  }
}
