import type { EpochDay } from '../../lib/assessment/time'
import { formatDay, parseDay } from '../../lib/assessment/time'
import { coast } from './bootstrap'
import { type DiverInSeason, startOf } from './choose'
import { doInOrder } from './clock'
import { type ClubData, type CoachData, clubs, coaches, type SquadData, squads } from './coast'
import { type Acts, decideOnQueue, signWhatIsReached } from './desk'
import { markFilms } from './films'
import { lookAt, send } from './hands'
import { tellMishaps } from './mishaps'
import { recogniseOn, settleMoves, standDownOn } from './office'
import { reviewFilmsOn } from './review'
import { instantOn, seasonDays, today, trains, weekdayOf } from './season'
import { correct, type Later, lookOnVideo } from './second-look'
import { dive, getCoach, open, type Session, type SessionOpen, signFirst } from './session'
import { stories } from './stories/stories'
import { firstDayOf, squadOn } from './stories/story'
import type { Remembered } from './turn'

/** The coach whose turn it is: the next one who worked here then and is not at another pool at that hour. */
function coachFor(squad: SquadData, day: EpochDay, busy: ReadonlySet<string>): CoachData {
  const { coaches: turns } = squad
  const first = Math.floor(day / 7) + squad.weekdays.indexOf(weekdayOf(day))
  for (let step = 0; step < turns.length; step++) {
    const coach = getCoach(turns[(first + step) % turns.length] ?? '')
    const here = !coach.left || day < parseDay(coach.left)
    if (here && !busy.has(`${coach.key} ${squad.hour}`)) return coach
  }
  throw new Error(`nobody is free for the ${squad.name} on ${formatDay(day)}`)
}

const hasBegun = ({ story }: DiverInSeason, day: EpochDay): boolean => firstDayOf(story) <= day

/** The sessions of a day, earliest first. A diver with a coach of her own dives when that coach is there. */
function sessionsOn(day: EpochDay, divers: readonly DiverInSeason[]): Session[] {
  const busy = new Set<string>()
  const sessions: Session[] = []
  for (const squad of squads.filter((one) => trains(one, day))) {
    const coach = coachFor(squad, day, busy)
    busy.add(`${coach.key} ${squad.hour}`)
    const members = divers.filter(
      (diver) =>
        squadOn(diver.story, formatDay(day)) === squad.key &&
        hasBegun(diver, day) &&
        (!diver.story.coachedBy || diver.story.coachedBy === coach.key),
    )
    sessions.push({ squad, day, coach, divers: members })
  }
  return sessions.sort((a, b) => a.squad.hour - b.squad.hour)
}

/** Evenings on which the head coaches sit down to the queue. */
const isDeskEvening = (day: EpochDay): boolean => day < today && weekdayOf(day) === 0

/** A head coach decides, then signs; what these sign-offs make ready waits for the next evening. */
async function* sitAtDesk(club: ClubData, day: EpochDay, divers: readonly DiverInSeason[]): Acts {
  const head = getCoach(club.head)
  const homes = squads.filter((squad) => squad.club === club.key).map((squad) => squad.key)
  const own = divers.filter((diver) => homes.includes(squadOn(diver.story, formatDay(day))) && hasBegun(diver, day))
  const ids = own.map((diver) => diver.id)
  const standing = await lookAt(head.key, ids, instantOn(day, 20, 30))
  yield* decideOnQueue(head, own, standing, instantOn(day, 20, 30))
  yield* signWhatIsReached(head, 'head', own, standing, instantOn(day, 21, 30))
}

const byTime = (a: Later, b: Later): number => a.at - b.at

/** Each coach sends what she looked at again in one go, when the last of it is done. */
async function sendLater(later: readonly Later[]): Promise<void> {
  for (const coach of coaches) {
    const own = later.filter((one) => one.coach === coach).sort(byTime)
    const divers = [...new Set(own.map((one) => one.diver))]
    const packs = divers.map((diver) => own.filter((one) => one.diver === diver).map((one) => one.item))
    await send(coach.key, own.at(-1)?.at ?? 0, packs)
  }
}

/** On Sunday the week's films are gone through: a second coach rates some, and now and then one puts her own right. */
async function goThroughFilms(day: EpochDay, week: readonly Remembered[]): Promise<void> {
  const evening = instantOn(day, 18)
  await sendLater(week.flatMap((seen) => lookOnVideo(seen, evening) ?? []))
  await sendLater(week.flatMap((seen) => correct(seen, evening) ?? []))
}

/** The day's sessions, hour by hour: first what is signed, in the order of the clock; then the decks work at the same time. */
async function trainOn(day: EpochDay, divers: readonly DiverInSeason[]): Promise<Remembered[]> {
  const sessions = sessionsOn(day, divers)
  const remembered: Remembered[] = []
  for (const hour of new Set(sessions.map(({ squad }) => squad.hour))) {
    const opened: SessionOpen[] = []
    for (const session of sessions.filter(({ squad }) => squad.hour === hour)) opened.push(await open(session))
    await doInOrder(opened.map(signFirst))
    const done = await Promise.all(opened.map(dive))
    remembered.push(...done.flat())
  }
  return remembered
}

/** Told after each day: the day, and the dives so far. */
export type Progress = (day: EpochDay, dives: number) => void

/**
 * Tells the season up to a day, through the same doors as decks and desks use. Answers how many dives it had. Throws
 * Error at the first thing that the rules refuse.
 */
export async function tellSeason(until: EpochDay, progress: Progress, told = stories): Promise<number> {
  const divers = told.map((story) => startOf(story, coast.diver(story.key)))
  const season: Remembered[] = []
  let weekBegan = 0
  for (const day of seasonDays().filter((one) => one <= until)) {
    await recogniseOn(day, divers)
    await settleMoves(day, divers)
    const remembered = await trainOn(day, divers)
    await tellMishaps(day, divers)
    await standDownOn(day, divers)
    await reviewFilmsOn(day, divers)
    season.push(...remembered)
    if (weekdayOf(day) === 0) {
      await goThroughFilms(day, season.slice(weekBegan))
      weekBegan = season.length
    }
    if (isDeskEvening(day)) await doInOrder(clubs.map((club) => sitAtDesk(club, day, divers)))
    progress(day, season.length)
  }
  if (until === today) await markFilms(season, instantOn(today, 17))
  return season.length
}

/** Coaches who have left, with the day. */
export const leavers = coaches.flatMap((coach) => (coach.left ? [{ key: coach.key, on: coach.left }] : []))
