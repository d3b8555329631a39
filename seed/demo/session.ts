import type { DeckItem } from '../../lib/assessment/deck/contract'
import { type EpochDay, formatDay, parseDay } from '../../lib/assessment/time'
import type { Curriculum } from '../../lib/curriculum/edition/curriculum'
import { chanceOf } from './chance'
import { chooseTurns, type DiverInSeason } from './choose'
import { type ClubData, type CoachData, clubs, coaches, type SquadData } from './coast'
import { type Acts, signWhatIsReached } from './desk'
import { watchedIn } from './eye'
import { getStanding, lookAt, type Standing, send } from './hands'
import { instantOn, isTest, today } from './season'
import { type Deck, type Remembered, takeTurn } from './turn'

/** A squad on the deck, with the coach who rates it. */
export interface Session {
  readonly squad: SquadData
  readonly day: EpochDay
  readonly coach: CoachData
  readonly divers: readonly DiverInSeason[]
}

/** A session that has begun. */
export interface SessionOpen {
  readonly session: Session
  readonly began: number
  readonly there: readonly DiverInSeason[]
  readonly standing: Standing
}

export const getCoach = (key: string): CoachData => {
  const coach = coaches.find((one) => one.key === key)
  if (!coach) throw new Error(`the demo has no coach ${key}`)
  return coach
}
export const getClub = (key: string): ClubData => {
  const club = clubs.find((one) => one.key === key)
  if (!club) throw new Error(`the demo has no club ${key}`)
  return club
}

const isAway = ({ story }: DiverInSeason, day: EpochDay): boolean =>
  (story.away ?? []).some(([from, to]) => day >= parseDay(from) && day <= parseDay(to))

/** Whether a diver is at a session: by her own habit, and always when the story needs her. */
function isThere(diver: DiverInSeason, { day }: Session): boolean {
  if (isAway(diver, day)) return false
  if (diver.story.episodes?.some((episode) => parseDay(episode.on) === day)) return true
  return chanceOf(diver.story.key, day, 'there').happens(diver.story.attends)
}

const deviceOf = (coach: CoachData): string => chanceOf('device', coach.key).id(Date.UTC(2024, 8, 1))

function openDeck(session: Session, began: number, curriculum: Curriculum): Deck {
  const { squad, day, coach } = session
  return {
    coach,
    device: deviceOf(coach),
    club: getClub(squad.club),
    began,
    film: `${formatDay(day)}/${squad.key}`,
    setting: isTest(day) ? 'test' : 'training',
    curriculum,
    watched: watchedIn(curriculum),
    clipsToCome: squad.key === 'cove' && day === today,
  }
}

/** The session begins: who is there, and how each stands. */
export async function open(session: Session): Promise<SessionOpen> {
  const { day, coach, squad } = session
  const began = instantOn(day, squad.hour)
  const there = session.divers.filter((diver) => isThere(diver, session))
  const ids = there.map((diver) => diver.id)
  return { session, began, there, standing: await lookAt(coach.key, ids, began) }
}

/** What the coach signs from last time before they warm up. */
export function signFirst({ session: { coach, squad }, there, standing, began }: SessionOpen): Acts {
  const role = coach.posts.some((post) => post.club === squad.club && post.role === 'head') ? 'head' : 'assistant'
  return signWhatIsReached(coach, role, there, standing, began)
}

/** Each diver who is there dives what she and the coach choose; the deck sends when it finds the network again. */
export async function dive({ session, began, there, standing }: SessionOpen): Promise<Remembered[]> {
  const { day, coach } = session
  const remembered: Remembered[] = []
  const packs: DeckItem[][] = []
  let at = began + 10 * 60_000
  for (const diver of there) {
    const evaluation = getStanding(standing, diver)
    const deck = openDeck(session, began, evaluation.curriculum)
    const chance = chanceOf(diver.story.key, day)
    const items: DeckItem[] = []
    for (const turn of chooseTurns(diver, evaluation, chance)) {
      const taken = takeTurn(turn, diver, deck, at, chance)
      items.push(...taken.items)
      remembered.push(...taken.remembered)
      diver.lastDived.set(turn.pair.key, day)
      at = taken.ended
    }
    packs.push(items)
    at += 60_000
  }
  await send(coach.key, at, packs)
  return remembered
}
