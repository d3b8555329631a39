import type { DeckItem, MomentItem, ObservationItem } from '../../lib/assessment/deck/contract'
import type { Curriculum, Pair } from '../../lib/curriculum/edition/curriculum'
import { placeFacts } from '../../lib/curriculum/place'
import { clipLinks } from '../clips/links'
import { type Quality, qualityOf } from './ability'
import type { Chance } from './chance'
import type { DiverInSeason, Turn } from './choose'
import type { ClubData, CoachData } from './coast'
import { rate, type Seen } from './eye'

/** The deck on which a session is recorded. */
export interface Deck {
  readonly coach: CoachData
  readonly device: string
  readonly club: ClubData
  readonly began: number
  /** Folder of the session's film. */
  readonly film: string
  readonly setting: 'training' | 'test'
  readonly curriculum: Curriculum
  readonly watched: ReadonlySet<string>
  /** The camera has not been emptied yet: what was filmed is marked so, and waits for its clip. */
  readonly clipsToCome: boolean
}

/** A dive that may be looked at once more: by another coach on video, or by the same one who had it wrong. */
export interface Remembered {
  readonly observation: ObservationItem
  readonly pair: Pair
  readonly level: number
  readonly quality: Quality
  readonly called: boolean
  readonly deck: Deck
  readonly diver: DiverInSeason
}

export interface TurnTaken {
  readonly items: readonly DeckItem[]
  readonly remembered: readonly Remembered[]
  readonly ended: number
}

const notes = [
  'Better as soon as the arms waited for the board.',
  'Keeps looking down for the end of the board. Count the steps aloud.',
  'Nervous today; went back to the last thing that felt easy, then again.',
  'Asked for one more, and it was the best.',
  'Needs stronger shoulders for this. Wall handstands at home, with someone there.',
  'Rushed. Slower walk, same hurdle.',
  'Saw the water early for the first time.',
  'Tired at the end of the session; leave it there.',
]

/** Where the dive can be seen: in one of our own films where it was drawn, sound or not as it was; else in the session's film. */
function momentOf(deck: Deck, pair: Pair, { faults }: Seen, at: number, chance: Chance): MomentItem {
  const id = chance.id(at + 9_000)
  const films = clipLinks(pair.skill.dive ?? '', placeFacts[pair.holding.place].height)
  const shown = films.filter(({ sound }) => sound === (faults.length === 0))
  const drawn = shown[Math.floor(at / 1000) % shown.length]
  if (drawn) return { id, link: drawn.link, start: drawn.start, end: drawn.end }
  const start = Math.round((at - deck.began) / 100) / 10
  const end = Math.round((start + 2.5 + 3 * chance.uniform()) * 10) / 10
  return { id, link: `https://${deck.club.videoHost}/${deck.film}`, start, end }
}

/** A camera that begins a clip every half minute: no two dives of a session are closer. */
const clipNumber = ({ began }: Deck, at: number): number => 1 + Math.floor((at - began) / 30_000)

/** Dives a turn from `start` on and writes down what the coach's deck sends. */
export function takeTurn(turn: Turn, diver: DiverInSeason, deck: Deck, start: number, chance: Chance): TurnTaken {
  const { pair } = turn
  const level = deck.curriculum.levelIndex(turn.level)
  const about = { diver: diver.id, skill: pair.holding.skill, place: pair.holding.place, atLevel: turn.level }
  const call = turn.called ? chance.id(start) : null
  const items: DeckItem[] = []
  const remembered: Remembered[] = []
  if (call) {
    const declared = { id: call, count: turn.dives.length, calledAt: start, device: deck.device }
    items.push({ kind: 'call', ...about, ...declared })
  }
  let at = start
  for (const [index, known] of turn.dives.entries()) {
    at += chance.between(35_000, 75_000)
    const practised = diver.practised.get(pair.key) ?? 0
    diver.practised.set(pair.key, practised + 1)
    const quality = qualityOf(pair, diver.story.ability, practised, chance)
    const seen = rate({ pair, level, quality, coach: deck.coach, watched: deck.watched, known }, chance)
    const filmed = chance.happens(pair.skill.dive || pair.holding.place === '3m' ? 0.3 : 0.03)
    const waits = deck.clipsToCome && (filmed || index === 0)
    const note =
      index === turn.dives.length - 1 && turn.note ? turn.note : chance.happens(0.03) ? chance.pick(notes) : null
    const attempt = chance.id(at)
    const observation: ObservationItem = {
      kind: 'observation',
      id: chance.id(at + 8_000),
      attempt,
      edition: deck.curriculum.hash,
      observedOn: 'deck',
      observedAt: at + 8_000,
      ...seen,
      note,
      moments: filmed && !waits ? [momentOf(deck, pair, seen, at, chance)] : [],
      supersedes: null,
    }
    items.push({
      kind: 'attempt',
      id: attempt,
      ...about,
      call: call ? { id: call, number: index + 1 } : null,
      attemptedAt: at,
      setting: deck.setting,
      cued: !turn.called && chance.happens(0.5),
      device: deck.device,
      ...(waits ? { filmed: { clip: clipNumber(deck, at), at: at + 4_000 } } : {}),
    })
    items.push(observation)
    remembered.push({ observation, pair, level, quality, called: turn.called, deck, diver })
  }
  return { items, remembered, ended: at + 20_000 }
}
