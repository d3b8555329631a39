/** The dive groups of the World Aquatics rules (DV 2), in the order of their first digit 1–6. */
export const families = ['forward', 'back', 'reverse', 'inward', 'twisting', 'armstand'] as const
export type Family = (typeof families)[number]

/** A straight, B pike, C tuck, D free (DV 2). */
export const positions = ['A', 'B', 'C', 'D'] as const
export type Position = (typeof positions)[number]

/** The four ways to leave a springboard; a twisting dive has that of its second digit. */
export type Direction = 'forward' | 'back' | 'reverse' | 'inward'

/** A dive number taken apart. `canonical` is upper case without spaces, e.g. `401B`. */
export interface Dive {
  readonly canonical: string
  readonly family: Family
  /** Way of leaving the board; of an armstand dive, the direction of its second digit ('forward' when 0). */
  readonly direction: Direction
  readonly flying: boolean
  readonly halfSomersaults: number
  readonly halfTwists: number
  readonly position: Position
}

/** Which way the diver faces at take-off: out over the water, or in towards the board. */
export type Facing = 'out' | 'in'
/** Which way the body turns. */
export type Sense = 'forwards' | 'backwards'
/** What meets the water first. */
export type EntryWay = 'head-first' | 'feet-first'

/** What a dive number implies. */
export interface DiveFacets {
  readonly family: Family
  readonly direction: Direction
  /** Out over the water, or in towards the board; null for armstand. */
  readonly facing: Facing | null
  readonly sense: Sense
  readonly halfSomersaults: number
  readonly halfTwists: number
  readonly flying: boolean
  readonly position: Position
  readonly enters: EntryWay
  /** Side of the body towards the sense of the rotation at entry: from the sense, swapped by an odd number of half twists. */
  readonly entrySide: 'front' | 'back'
}
