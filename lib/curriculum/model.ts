import type { Direction, EntryWay, Facing, Family, Position, Sense } from './dives/model'
import type { Event } from './event/model'
import type { AskedMeasure } from './measure/model'
import type { Place } from './place'
import type { Holding, Requirement } from './requirement/model'

/** Rating of one attempt on one criterion: 0 missing or unsafe, 1 far off, 2 recognisable, 3 sound, 4 a model of it. */
export const ratings = [0, 1, 2, 3, 4] as const
export type Rating = (typeof ratings)[number]

/** Phases of every kind of skill, in the order in which they can occur. */
export const phases = [
  'set-up',
  'approach',
  'hurdle',
  'stance',
  'press',
  'take-off',
  'movement',
  'flight',
  'twist start',
  'twist stop',
  'come-out',
  'entry',
  'under water',
  'finish',
] as const
export type Phase = (typeof phases)[number]

/** The phases of each kind of skill; the arc has a variant for each. A drill is floor, dry-board or pool work without a dive. */
export const phaseSets = {
  running: ['approach', 'hurdle', 'press', 'take-off', 'flight', 'come-out', 'entry', 'under water'],
  standing: ['stance', 'press', 'take-off', 'flight', 'come-out', 'entry', 'under water'],
  'running feet-first': ['approach', 'hurdle', 'press', 'take-off', 'flight', 'entry'],
  'standing feet-first': ['stance', 'press', 'take-off', 'flight', 'entry'],
  twister: ['approach', 'hurdle', 'press', 'take-off', 'twist start', 'twist stop', 'come-out', 'entry', 'under water'],
  'standing twister': ['stance', 'press', 'take-off', 'twist start', 'twist stop', 'come-out', 'entry', 'under water'],
  'fall-in': ['stance', 'flight', 'entry', 'under water'],
  drill: ['set-up', 'movement', 'finish'],
} as const satisfies Record<string, readonly Phase[]>
/** A kind of skill by its phases. */
export type PhaseSet = keyof typeof phaseSets

/** How the take-off is reached; it does not follow from a dive's number. */
export type Approach = 'running' | 'standing' | 'armstand'

/** A skill belongs to a dive family, or to the safety lead-ups that every family rests on. */
export type SkillFamily = Family | 'safety'

/** What a skill does in the air and water. Of a dive it follows from the number; a lead-up states what applies to it. */
export interface SkillFacets {
  readonly direction?: Direction
  readonly facing?: Facing
  readonly sense?: Sense
  readonly halfSomersaults?: number
  readonly halfTwists?: number
  readonly flying?: boolean
  readonly position?: Position
  readonly enters?: EntryWay
}

/** How much evidence a skill needs. Counts are attempts; windows are days, the last day inclusive. */
export interface Standard {
  readonly successes: number
  readonly of: number
  readonly coaches: number
  readonly days: number
  readonly withinDays: number
  /** Successes in the window that carry a video moment. */
  readonly moments: number
  /** Points of shortfall a success may carry; null: one for every six criteria that apply at any level, rounded up. */
  readonly slack: number | null
  /** A critical shortfall in any of the last `clean` attempts in which that criterion was rated stands. */
  readonly clean: number
  /** P(true success rate ≥ rate) ≥ at, uniform prior, over the last `over` complete called attempts. */
  readonly certainty: { readonly rate: number; readonly at: number; readonly over: number } | null
  readonly validForDays: number
  /** The lighter standard that renews a lapsed sign-off and clears a doubt: successes of the last `of`, newer than the lapse or doubt. */
  readonly recheck: { readonly successes: number; readonly of: number }
  readonly recheckWithinDays: number
}

/** A skill at one of the places where the programme teaches it. */
export interface SkillPlace {
  readonly place: Place
  /** The lowest level that teaches the skill here. */
  readonly level: string
  readonly signer: 'coach' | 'head'
  /** A lead-up at a board that the diver has not moved to yet: it does not need the board move. */
  readonly beforeMove: boolean
  readonly prerequisite: Requirement | null
  /** What differs from the programme's standard. */
  readonly standard: Partial<Standard>
}

/** A dive or a lead-up: a node of the tree, at its places. */
export interface Skill {
  readonly key: string
  readonly title: string
  readonly family: SkillFamily
  /** Canonical dive number, or null for a lead-up. */
  readonly dive: string | null
  readonly approach: Approach | null
  readonly phaseSet: PhaseSet
  readonly facets: SkillFacets
  readonly summary: string
  readonly places: readonly SkillPlace[]
}

/** Which (skill, place) pairs a criterion attaches to, or words of a fault are for: every stated field must match; an absent field matches all. */
export interface FacetMatcher {
  readonly families?: readonly SkillFamily[]
  readonly kinds?: readonly ('dive' | 'lead-up')[]
  readonly phaseSets?: readonly PhaseSet[]
  readonly approaches?: readonly Approach[]
  readonly directions?: readonly Direction[]
  readonly facing?: readonly Facing[]
  readonly sense?: readonly Sense[]
  readonly positions?: readonly Position[]
  readonly enters?: readonly EntryWay[]
  readonly halfSomersaults?: { readonly min?: number; readonly max?: number }
  readonly halfTwists?: { readonly min?: number; readonly max?: number }
  readonly places?: readonly Place[]
}
/** How a criterion finds its pairs: by facets, or by listed skills. */
export type AppliesTo =
  | { readonly by: 'facets'; readonly match: FacetMatcher }
  | { readonly by: 'skills'; readonly skills: readonly string[]; readonly places?: readonly Place[] }

/** One assessable statement inside a phase. Written once; it attaches itself to every pair that it matches. */
export interface Criterion {
  readonly key: string
  readonly phase: Phase
  readonly title: string
  readonly statement: string
  /** What is seen at ratings 0–4. */
  readonly anchors: readonly [string, string, string, string, string]
  readonly critical: boolean
  readonly appliesTo: AppliesTo
  /** Non-decreasing step function over the levels: the rating expected from `level` on; nothing (0) below the first step. */
  readonly expects: readonly { readonly level: string; readonly rating: Rating }[]
  /** Keys of faults, most usual first. */
  readonly faults: readonly string[]
  /** What may be measured for it on film. Absent: nothing. Editions that were published before there were measures stay the bytes that they are. */
  readonly measure?: AskedMeasure
}

/** What mends a fault. */
export interface Correction {
  readonly kind: 'cue' | 'drill' | 'conditioning'
  /** A cue is what the coach says out loud. */
  readonly text: string
  /** A drill is a (skill, place) of the tree. */
  readonly drill: Holding | null
  /** For which of the pairs that can have the fault; absent: for all. */
  readonly match?: FacetMatcher
}

/** Why a fault happens: for all pairs that can have it, or for those that match. */
export type Cause = string | { readonly text: string; readonly match: FacetMatcher }

/** What is seen to go wrong in a phase, why, and what mends it; the most usual first. */
export interface Fault {
  readonly key: string
  readonly phase: Phase
  /** What is seen, short enough for a button. */
  readonly seen: string
  readonly causes: readonly Cause[]
  readonly corrections: readonly Correction[]
}

/** A step of the programme's pathway. Levels are ordered as listed; level n implies level n − 1. */
export interface Level {
  readonly key: string
  readonly title: string
  readonly summary: string
  readonly requirement: Requirement
}

/** A height progression for a family: every dive of the family at `to` needs it, except skills marked `beforeMove`. */
export interface BoardMove {
  readonly key: string
  readonly title: string
  readonly family: Family
  readonly from: Place
  readonly to: Place
  readonly requirement: Requirement
}

/** After `afterDays` without an attempt at the place, its other skills close until each re-entry step is shown again. */
export interface LayOffRule {
  readonly place: Place
  readonly afterDays: number
  readonly reentry: readonly Holding[]
}

/** One version of the curriculum: the whole document, as it is canonicalised, hashed and published. */
export interface EditionDocument {
  readonly schemaVersion: 1
  readonly programme: string
  readonly title: string
  readonly levels: readonly Level[]
  /** From a level key that an earlier edition had to one of this edition. */
  readonly levelMap: Readonly<Record<string, string>>
  readonly standard: Standard
  readonly skills: readonly Skill[]
  readonly criteria: readonly Criterion[]
  readonly faults: readonly Fault[]
  readonly boardMoves: readonly BoardMove[]
  readonly layOff: readonly LayOffRule[]
  /** Absent: none. Editions that were published before there were events stay the bytes that they are. */
  readonly events?: readonly Event[]
}
