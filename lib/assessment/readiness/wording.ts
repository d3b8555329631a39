import { type Curriculum, type PairKey, splitPairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import { type Place, placeFacts, places } from '../../curriculum/place'
import type { IncidentKind, TargetKey } from '../record'
import { dateOf, type EpochDay } from '../time'
import type { Status } from './finding'

/** What sentences are made with: the edition for names, today for dates, the diver where one is spoken of. */
export interface Words {
  readonly curriculum: Curriculum
  readonly today: EpochDay
  /** First name as the club writes it; sentences do without when it is absent. */
  readonly diver?: string
}

/** Each status as a coach would say it, beside its mark. */
export const statusWord: Readonly<Record<Status, string>> = {
  met: 'met',
  lapsed: 'to renew',
  unproven: 'not shown yet',
  unmet: 'falls short',
}

/** Each rating in a word, beside its number. */
export const ratingWord: Readonly<Record<Rating, string>> = {
  0: 'missing or unsafe',
  1: 'far off',
  2: 'recognisable',
  3: 'sound',
  4: 'a model of it',
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** "26 October", with the year when it is not today's: "26 October 2025". */
export function dayName(day: EpochDay, { today }: Pick<Words, 'today'>): string {
  const year = dateOf(day).getUTCFullYear()
  const name = `${dateOf(day).getUTCDate()} ${months[dateOf(day).getUTCMonth()]}`
  return year === dateOf(today).getUTCFullYear() ? name : `${name} ${year}`
}

/** The same for the columns of a table: "26 Oct", "26 Oct 2025". */
export function dayInTable(day: EpochDay, words: Pick<Words, 'today'>): string {
  const [number = '', month = '', ...year] = dayName(day, words).split(' ')
  return [number, month.slice(0, 3), ...year].join(' ')
}

/** Where, as it follows a skill's title: "at 1 m", "on the dry board in the belt". */
export const placePhrase: Readonly<Record<Place, string>> = {
  floor: 'on the floor',
  trampoline: 'on the trampoline',
  'trampoline-belt': 'on the trampoline in the belt',
  'dry-board': 'on the dry board',
  'dry-board-belt': 'on the dry board in the belt',
  poolside: 'at the poolside',
  '1m': `at ${placeFacts['1m'].label}`,
  '3m': `at ${placeFacts['3m'].label}`,
  '5m': `at ${placeFacts['5m'].label}`,
  '7.5m': `at ${placeFacts['7.5m'].label}`,
  '10m': `at ${placeFacts['10m'].label}`,
}

const isPlace = (text: string): text is Place => places.some((place) => place === text)

/** A place that may come from another edition: its phrase, or the text itself. */
export const placeName = (place: string): string => (isPlace(place) ? placePhrase[place] : `at ${place}`)

/** "Forward dive, tuck at 1 m". A skill that the edition lacks is named by its key in quotation marks. */
export function pairName(pair: PairKey, { curriculum }: Pick<Words, 'curriculum'>): string {
  const { skill, place } = splitPairKey(pair)
  return `${curriculum.skills.get(skill)?.title ?? `“${skill}”`} ${placeName(place)}`
}

/** A level's title; a key that the edition lacks in quotation marks. */
export const levelName = (level: string, { curriculum }: Pick<Words, 'curriculum'>): string =>
  curriculum.levels[curriculum.levelIndex(level)]?.title ?? `“${level}”`

/** A criterion's title in quotation marks: “Hands locked”. */
export const criterionName = (criterion: string, { curriculum }: Pick<Words, 'curriculum'>): string =>
  `“${curriculum.criteria.get(criterion)?.title ?? criterion}”`

/** An incident in the middle of a sentence: "a bad landing". */
export const incidentName: Readonly<Record<IncidentKind, string>> = {
  'contact with the board': 'contact with the board',
  'too close': 'a dive too close to the board',
  'bad landing': 'a bad landing',
  'knock to the head': 'a knock to the head',
}

/** A target as what a diver is ready for: a level's title, or "3 m with forward dives". */
export function targetName(target: TargetKey, words: Pick<Words, 'curriculum'>): string {
  const [kind, first = '', to = ''] = target.split(':')
  if (kind === 'level') return levelName(target.slice('level:'.length), words)
  return `${isPlace(to) ? placeFacts[to].label : to} with ${first} dives`
}

/** A target as what is approved: a level's title, or "the move to 3 m with forward dives". */
export const stepName = (target: TargetKey, words: Pick<Words, 'curriculum'>): string =>
  target.startsWith('move:') ? `the move to ${targetName(target, words)}` : targetName(target, words)
