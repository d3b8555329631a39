import type { Family } from '../dives/model'
import type { Place } from '../place'

/** A (skill, place) pair: what a diver holds, and what a standard, a prerequisite or a pause speaks of. */
export interface Holding {
  readonly skill: string
  readonly place: Place
}

/** What a club must have for a requirement; one flag per club and feature. */
export const venueFeatures = ['board-3m'] as const
export type VenueFeature = (typeof venueFeatures)[number]

interface Node<Kind extends string> {
  readonly kind: Kind
  /** The author's reason, in words a coach would say. */
  readonly reason?: string
}

/** Every child. */
export interface AllNode extends Node<'all'> {
  readonly of: readonly Requirement[]
}
/** One of the children. */
export interface AnyNode extends Node<'any'> {
  readonly of: readonly Requirement[]
}
/** At least `n` of the children. */
export interface AtLeastNode extends Node<'atLeast'> {
  readonly n: number
  readonly of: readonly Requirement[]
}
/** A signed skill at a place and level. */
export interface SignOffLeaf extends Node<'signOff'>, Holding {
  /** Level at which it must be signed; absent: the lowest level that teaches the skill at that place. */
  readonly atLevel?: string
}
/** A rating reached often enough on one criterion, at any of the pairs. */
export interface CriterionLeaf extends Node<'criterion'> {
  readonly criterion: string
  readonly at: readonly Holding[]
  readonly rating: number
  /** `times` of the last `of` explicit ratings in called attempts of the last `withinDays` days. */
  readonly times: number
  readonly of: number
  readonly withinDays: number
}
/** An approved level. */
export interface LevelLeaf extends Node<'level'> {
  readonly level: string
}
/** An approved board move. */
export interface BoardMoveLeaf extends Node<'boardMove'> {
  readonly family: Family
  readonly to: Place
}
/** An age within bounds. */
export interface AgeLeaf extends Node<'age'> {
  /** Whole years, inclusive. */
  readonly min?: number
  readonly max?: number
  readonly on: 'the date' | 'year-end'
}
/** A list of dives that can be entered in an event. */
export interface DiveListLeaf extends Node<'diveList'> {
  readonly event: string
}
/** Something that the club has. */
export interface VenueLeaf extends Node<'venue'> {
  readonly feature: VenueFeature
}

/** What is looked up in a record. */
export type Leaf = SignOffLeaf | CriterionLeaf | LevelLeaf | BoardMoveLeaf | AgeLeaf | DiveListLeaf | VenueLeaf
/** What combines others. */
export type Branch = AllNode | AnyNode | AtLeastNode

/** A condition of the curriculum as readonly data; there is no `not`. */
export type Requirement = Branch | Leaf
export type RequirementKind = Requirement['kind']

/**
 * A reader of requirements, exhaustive by construction: a kind added to the union does not compile until every reader
 * (evaluate, say, list references, diff, lint) has a case for it.
 */
export type RequirementReader<Result, Context> = {
  readonly [Kind in RequirementKind]: (node: Extract<Requirement, { kind: Kind }>, context: Context) => Result
}

/** Applies an exhaustive reader to a node. */
export function readRequirement<Result, Context>(
  reader: RequirementReader<Result, Context>,
  node: Requirement,
  context: Context,
): Result {
  // The union member and its reader always match; TypeScript cannot see that correlation through an index.
  const read = reader[node.kind] as (node: Requirement, context: Context) => Result
  return read(node, context)
}
