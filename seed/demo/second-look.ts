import type { ObservationItem } from '../../lib/assessment/deck/contract'
import type { Rating } from '../../lib/curriculum/model'
import { chanceOf } from './chance'
import { type CoachData, coaches } from './coast'
import { rate } from './eye'
import type { Remembered } from './turn'

/** Something that a coach sends after the session. */
export interface Later {
  readonly coach: CoachData
  readonly diver: string
  readonly at: number
  readonly item: ObservationItem
}

const minute = 60_000
const reasons = [
  'Tapped the row below by mistake.',
  'Seen again on the film: I had been too kind.',
  'Wrote down the dive before this one.',
  'Talked it over with the other coach and looked again.',
]

const workedThen = (coach: CoachData, at: number): boolean => !coach.left || at < Date.parse(coach.left) - 86_400_000

/** A second coach rates some filmed dives without having seen the first one's ratings. */
export function lookOnVideo(dive: Remembered, evening: number): Later | null {
  const { observation, pair, level, quality, deck } = dive
  const chance = chanceOf('video', observation.id)
  if (observation.moments.length === 0 || !dive.called || dive.diver.story.coachedBy) return null
  if (!chance.happens(0.3)) return null
  const others = coaches.filter(
    (coach) =>
      coach.key !== deck.coach.key &&
      coach.posts.some((post) => post.club === deck.club.key) &&
      workedThen(coach, evening),
  )
  // A club with one coach has nobody to ask.
  if (others.length === 0) return null
  const coach = chance.pick(others)
  const at = evening + chance.between(0, 40) * minute
  const seen = rate({ pair, level, quality, coach, watched: deck.watched, known: {} }, chance)
  const item: ObservationItem = {
    ...observation,
    ...seen,
    id: chance.id(at),
    observedOn: 'video',
    observedAt: at,
    note: null,
    moments: [],
  }
  return { coach, diver: dive.diver.id, at: at + minute, item }
}

/** Now and then the same coach had it wrong, and puts one rating right: never a critical one upwards. */
export function correct(dive: Remembered, evening: number): Later | null {
  const { observation, pair, deck } = dive
  const chance = chanceOf('correction', observation.id)
  const wrong = pair.criteria.find(({ criterion }) => !criterion.critical && criterion.key in observation.ratings)
  if (!wrong || !chance.happens(0.02)) return null
  const { key } = wrong.criterion
  const was = observation.ratings[key] ?? 2
  const rating = Math.max(1, was === 4 || chance.happens(0.6) ? was - 1 : was + 1) as Rating
  const at = evening + chance.between(41, 80) * minute
  const item: ObservationItem = {
    ...observation,
    id: chance.id(at),
    observedAt: at,
    ratings: { ...observation.ratings, [key]: rating },
    moments: observation.moments.map((moment) => ({ ...moment, id: chance.id(at + 1) })),
    supersedes: { id: observation.id, reason: chance.pick(reasons) },
  }
  return rating === was ? null : { coach: deck.coach, diver: dive.diver.id, at: at + minute, item }
}
