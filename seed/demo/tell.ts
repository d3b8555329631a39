import type { EpochDay } from '../../lib/assessment/time'
import { parseDay } from '../../lib/assessment/time'
import { coast } from './bootstrap'
import type { DiverInSeason } from './choose'
import { doInOrder } from './clock'
import { type ClubData, type CoachData, clubs, coaches, type SquadData, squads } from './coast'
import { type Acts, decideOnQueue, signWhatIsReached } from './desk'
import { lookAt, send } from './hands'
import { tellMishaps } from './mishaps'
import { hoursOf, instantOn, isCamp, seasonDays, today, weekdayOf } from './season'
import { correct, type Later, lookOnVideo } from './second-look'
import { dive, getCoach, open, type Session, type SessionOpen, signFirst } from './session'
import { stories } from './stories/stories'
import type { Remembered } from './turn'

/** The coaches who are free at an hour, each for one squad: by turns, and only while they worked here. */
function coachFor(squad: SquadData, day: EpochDay, hour: number, busy: ReadonlySet<string>): CoachData {
  const { coaches: turns } = squad
  const first = isCamp(day) ? 0 : day % turns.length
  for (let step = 0; step < turns.length; step++) {
    const coach = getCoach(turns[(first + step) % turns.length] ?? '')
    const here = !coach.left || day < parseDay(coach.left)
    if (here && !busy.has(`${coach.key} ${hour}`)) return coach
  }
  throw new Error(`nobody is free for the ${squad.name} on day ${day} at ${hour}`)
}

/** The sessions of a day, earliest first. A diver with a coach of her own dives when that coach is there. */
function sessionsOn(day: EpochDay, divers: readonly DiverInSeason[]): Session[] {
  const busy = new Set<string>()
  const sessions: Session[] = []
  for (const squad of squads) {
    for (const hour of hoursOf(squad, day)) {
      const coach = coachFor(squad, day, hour, busy)
      busy.add(`${coach.key} ${hour}`)
      const members = divers.filter(
        ({ story }) => story.squad === squad.key && (!story.coachedBy || story.coachedBy === coach.key),
      )
      sessions.push({ squad, day, hour, coach, divers: members })
    }
  }
  return sessions.sort((a, b) => a.hour - b.hour)
}

/** Evenings on which the head coaches sit down to the queue. */
const isDeskEvening = (day: EpochDay): boolean =>
  day < today && (weekdayOf(day) === 0 || weekdayOf(day) === 3 || (isCamp(day) && weekdayOf(day) === 5))

/** A head coach decides, then signs; what these sign-offs make ready waits for the next evening. */
async function* sitAtDesk(club: ClubData, day: EpochDay, divers: readonly DiverInSeason[]): Acts {
  const head = getCoach(club.head)
  const homes = squads.filter((squad) => squad.club === club.key).map((squad) => squad.key)
  const own = divers.filter(({ story }) => homes.includes(story.squad))
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
  for (const hour of new Set(sessions.map((session) => session.hour))) {
    const opened: SessionOpen[] = []
    for (const session of sessions.filter((one) => one.hour === hour)) opened.push(await open(session))
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
  const divers: DiverInSeason[] = told.map((story) => ({
    story,
    id: coast.diver(story.key),
    practised: new Map(),
    lastDived: new Map(),
  }))
  let dives = 0
  let week: Remembered[] = []
  for (const day of seasonDays().filter((one) => one <= until)) {
    const remembered = await trainOn(day, divers)
    dives += remembered.length
    await tellMishaps(day, divers)
    week.push(...remembered)
    if (weekdayOf(day) === 0) {
      await goThroughFilms(day, week)
      week = []
    }
    if (isDeskEvening(day)) await doInOrder(clubs.map((club) => sitAtDesk(club, day, divers)))
    progress(day, dives)
  }
  return dives
}

/** Coaches who have left, with the day. */
export const leavers = coaches.flatMap((coach) => (coach.left ? [{ key: coach.key, on: coach.left }] : []))
