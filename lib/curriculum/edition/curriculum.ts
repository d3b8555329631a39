import type { Event } from '../event/model'
import type {
  BoardMove,
  Criterion,
  EditionDocument,
  Fault,
  LayOffRule,
  Level,
  Rating,
  Skill,
  SkillPlace,
  Standard,
} from '../model'
import type { Place } from '../place'
import type { Holding, Requirement } from '../requirement/model'

/** `skill@place`, e.g. `101C@1m`: the key of a (skill, place) pair in maps and in the database. */
export type PairKey = `${string}@${Place}`

/** The key of a (skill, place) pair. */
export const pairKey = (holding: Holding): PairKey => `${holding.skill}@${holding.place}`

/** What `pairKey` joined. A key from another edition may name a place that this one has not. */
export function splitPairKey(key: PairKey): { readonly skill: string; readonly place: string } {
  const cut = key.lastIndexOf('@')
  return { skill: key.slice(0, cut), place: key.slice(cut + 1) }
}

/** A criterion attached to a pair, with its expectation laid out by level. */
export interface AttachedCriterion {
  readonly criterion: Criterion
  /** Rating expected at each level, by level index; 0 where nothing is expected. Non-decreasing. */
  readonly expects: readonly Rating[]
}

/** The programme's standard with what the pair changes, and `slack` worked out. */
export interface PairStandard extends Standard {
  readonly slack: number
}

/** A (skill, place) of an edition with everything that follows from it. */
export interface Pair {
  readonly key: PairKey
  readonly holding: Holding
  readonly skill: Skill
  readonly at: SkillPlace
  /** Index of the lowest level that teaches it. */
  readonly level: number
  /** In phase order of the skill's phase set, then key order. */
  readonly criteria: readonly AttachedCriterion[]
  readonly standard: PairStandard
  /** What must hold before it is open: the author's prerequisite and, implicitly, the board move; null when nothing. */
  readonly prerequisite: Requirement | null
}

/** An edition indexed for reading: pure lookups over one immutable document. Made by `indexEdition`. */
export interface Curriculum {
  readonly document: EditionDocument
  /** SHA-256 of the canonical document, lower-case hex: the edition's name. */
  readonly hash: string
  readonly levels: readonly Level[]
  /** Index of a level key, after `levelMap`; −1 when the edition does not know it. */
  readonly levelIndex: (key: string) => number
  readonly skills: ReadonlyMap<string, Skill>
  readonly criteria: ReadonlyMap<string, Criterion>
  readonly faults: ReadonlyMap<string, Fault>
  readonly pairs: ReadonlyMap<PairKey, Pair>
  readonly boardMoves: readonly BoardMove[]
  readonly boardMove: (family: string, to: Place) => BoardMove | undefined
  readonly layOff: readonly LayOffRule[]
  readonly events: ReadonlyMap<string, Event>
}
