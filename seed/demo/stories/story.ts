import type { ClosesKind, IncidentKind, TargetKey } from '../../../lib/assessment/record'
import { type EpochDay, parseDay } from '../../../lib/assessment/time'
import type { PairKey } from '../../../lib/curriculum/edition/curriculum'
import type { Rating } from '../../../lib/curriculum/model'
import type { CoachKey, SquadKey } from '../coast'
import { firstDay } from '../season'

/** Levels of the pathway, by the keys of the demo's curriculum. */
export type LevelKey = 'soundings' | 'bearings' | 'plumb' | 'reach' | 'traverse' | 'offing' | 'landfall'

/** What a diver can do, in points of a rating; see ability.ts. */
export interface Ability {
  /** How a skill looks when it is new, and once it is learned. */
  readonly fresh: number
  readonly learned: number
  /** Recorded attempts after which two thirds of the way is gone. */
  readonly pace: number
  /** How well the habits of safety sit. */
  readonly safe: number
  /** Added for a phase, for a criterion, or for a criterion at one pair (`101C@1m hands-locked`). */
  readonly marked?: Readonly<Record<string, number>>
}

/** Something that happened on a day of the story, and was recorded so. */
export interface Episode {
  readonly on: string
  readonly pair: PairKey
  /** One entry a dive: what was seen otherwise than the diver's usual. */
  readonly dives: readonly Readonly<Record<string, Rating>>[]
  readonly called: boolean
  readonly note?: string
}

/** An incident after a session, recorded by the head coach, and cleared by her within the hour or still open. */
export interface Mishap {
  readonly on: string
  readonly pair: PairKey
  readonly what: IncidentKind
  readonly note: string
  /** What she wrote when she cleared it. */
  readonly cleared?: string
}

/** A head coach's decision that is part of the story rather than of the queue's usual run. */
export interface Answer {
  readonly target: TargetKey
  /** On the first evening from this day on which the target is ready. */
  readonly from: string
  readonly outcome: 'return'
  readonly reason: string
  readonly wantsMoreOf: readonly PairKey[]
}

/** A sign-off for which the head coach waived the second coach. */
export interface Waiver {
  readonly pair: PairKey
  readonly from: string
  readonly reason: string
}

/** Kept from water, boards or new dives, as the head coach wrote it on the evening of `on`. */
export interface KeptFrom {
  readonly on: string
  readonly closes: ClosesKind
  readonly until: string | null
  readonly reason: string
}

/** An evening on which the head coach went through the films of a step that is ready. */
export interface Reviewed {
  readonly on: string
  readonly target: TargetKey
  /** The pair whose newest moment she questions, and what she asks. */
  readonly asks: { readonly pair: PairKey; readonly words: string }
  /** The pair whose films did not open. */
  readonly away: PairKey
}

export interface Story {
  readonly key: string
  readonly given: string
  readonly family: string
  readonly born: string
  readonly squad: SquadKey
  /** First day on the deck: the season's first, unless it says otherwise. */
  readonly begins?: string
  /** What the diver's page shows on the demo's today, in a sentence or two; most divers are simply on their way. */
  readonly shows?: string
  readonly ability: Ability
  /** Share of the squad's sessions at which the diver is there. */
  readonly attends: number
  /** The level, with all that it asks, that the head coach recognised on the first day. */
  readonly recognised?: LevelKey
  /** The level towards which the diver works; with it, she keeps what she has. */
  readonly until: LevelKey
  /** Which of several ways she takes; by her key, unless it says otherwise. */
  readonly taste?: number
  /** Spells without training, both days inclusive. */
  readonly away?: readonly (readonly [string, string])[]
  /** Pairs that are left out. */
  readonly leavesOut?: readonly PairKey[]
  readonly episodes?: readonly Episode[]
  /** Advancements that the head coach has not come to yet, from a day on or always. */
  readonly waits?: readonly TargetKey[]
  readonly answers?: readonly Answer[]
  readonly reviewed?: Reviewed
  readonly waivers?: readonly Waiver[]
  readonly keptFrom?: KeptFrom
  readonly mishap?: Mishap
  /** When a coach noted that the diver has grown quickly. */
  readonly grown?: { readonly on: string; readonly words: string }
  /** True while nobody has brought the consents back yet. */
  readonly consentsMissing?: true
  /** On this day both head coaches have agreed, and she dives with the other club's squad from then on. */
  readonly moves?: { readonly on: string; readonly to: SquadKey }
  /** Pairs whose sign-off still waits for the coach. */
  readonly unsigned?: readonly PairKey[]
  /** The only coach who is ever there for this diver, on the deck or on film. */
  readonly coachedBy?: CoachKey
}

/** Usual ways in which divers learn. */
export const quick: Ability = { fresh: 2.4, learned: 3.6, pace: 6, safe: 3.65 }
export const steady: Ability = { fresh: 2, learned: 3.4, pace: 9, safe: 3.5 }
export const slow: Ability = { fresh: 1.2, learned: 2.9, pace: 22, safe: 3 }
/** Divers who came with most of it, and polish. */
export const seasoned: Ability = { fresh: 2.8, learned: 3.8, pace: 5, safe: 3.75 }

/** The first day on the deck. */
export const firstDayOf = ({ begins }: Story): EpochDay => (begins ? parseDay(begins) : firstDay)

/** The squad on a day: another one after a move to another club. */
export const squadOn = ({ squad, moves }: Story, day: string): SquadKey => (moves && day >= moves.on ? moves.to : squad)
