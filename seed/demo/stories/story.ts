import type { IncidentKind, TargetKey } from '../../../lib/assessment/record'
import type { PairKey } from '../../../lib/curriculum/edition/curriculum'
import type { Rating } from '../../../lib/curriculum/model'
import type { CoachKey, SquadKey } from '../coast'
import type { StageKey } from '../pathway'

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

export interface Story {
  readonly key: string
  readonly given: string
  readonly family: string
  readonly born: string
  readonly squad: SquadKey
  /** What the diver's page shows on the demo's today, in a sentence or two. */
  readonly shows: string
  readonly ability: Ability
  /** Share of the squad's sessions at which the diver is there. */
  readonly attends: number
  /** Spells without training, both days inclusive. */
  readonly away?: readonly (readonly [string, string])[]
  /** From which day each stage is worked on. */
  readonly reaches: readonly (readonly [string, ...StageKey[]])[]
  /** Pairs of those stages that are left out. */
  readonly leavesOut?: readonly PairKey[]
  readonly episodes?: readonly Episode[]
  /** Advancements that the head coach has not come to yet. */
  readonly waits?: readonly TargetKey[]
  readonly answers?: readonly Answer[]
  readonly mishap?: Mishap
  /** When a coach noted that the diver has grown quickly. */
  readonly grown?: { readonly on: string; readonly words: string }
  /** True while nobody has brought the consents back yet. */
  readonly consentsMissing?: true
  readonly waivers?: readonly Waiver[]
  /** Pairs whose sign-off still waits for the coach. */
  readonly unsigned?: readonly PairKey[]
  /** The only coach who is ever there for this diver, on the deck or on film. */
  readonly coachedBy?: CoachKey
}
