import type { Direction, Position } from './model'

/**
 * The springboard components of the World Aquatics degree of difficulty (Competition Regulations, Part Four: Diving,
 * Appendix 8; same structure as FINA Diving Rules 2017–2021, Appendix 1). Every cell is an integer number of tenths;
 * null is a dash: the dive is not possible. Cells marked * were read in a transcription only, and agree with memory; the
 * others in USA Diving's reprint of the FINA tables (2006). B and D do not hold for the platform.
 */
export type Tenths = number
/** Heights of the springboards that the difficulty tables speak of, in metres. */
export type SpringboardHeight = 1 | 3

/** Most half somersaults and half twists that the tables know. */
export const mostHalves = 9

/** A: somersaults, by half somersaults 0–9. Starred: 4 and 4½ at 1 m, 4 at 3 m. */
export const somersaults: Readonly<Record<SpringboardHeight, readonly Tenths[]>> = {
  1: [9, 11, 12, 16, 20, 24, 27, 30, 33, 38],
  3: [10, 13, 13, 15, 18, 22, 23, 28, 29, 35],
}

/** Bands of B: 0–1, 1½–2, 2½, 3–3½, 4–4½ somersaults. */
type Bands = readonly [Tenths | null, Tenths | null, Tenths | null, Tenths | null, Tenths | null]

/** The band of B for half somersaults 0–9. */
export const flightBands = [0, 0, 0, 1, 1, 2, 3, 3, 4, 4] as const

/** B: flight position. Starred: the last band. */
export const flightPosition: Readonly<Record<Position, Readonly<Record<Direction, Bands>>>> = {
  C: {
    forward: [1, 0, 0, 0, 0],
    back: [1, 0, 1, 0, 0],
    reverse: [1, 0, 0, 0, 2],
    inward: [-3, 1, 2, 3, 4],
  },
  B: {
    forward: [2, 1, 2, 3, 4],
    back: [2, 3, 3, 3, 4],
    reverse: [2, 3, 2, 3, 5],
    inward: [-2, 3, 5, 6, 8],
  },
  A: {
    forward: [3, 4, 6, null, null],
    back: [3, 5, 7, null, null],
    reverse: [3, 6, 6, null, null],
    inward: [1, 8, null, null, null],
  },
  D: {
    forward: [1, 0, 0, 0, null],
    back: [1, -1, -1, 0, null],
    reverse: [1, -1, -2, 0, null],
    inward: [-1, 2, 4, null, null],
  },
}

/** Added to B for a flying dive. */
export const flying: Readonly<Record<Direction, Bands>> = {
  forward: [2, 2, 3, 4, null],
  back: [1, 2, 3, null, null],
  reverse: [1, 2, 3, null, null],
  inward: [4, 5, 7, null, null],
}

/** A cell of C that holds up to and including `until` half somersaults. */
interface TwistStep {
  readonly until: number
  readonly tenths: Tenths
}
const any = (tenths: Tenths): readonly TwistStep[] => [{ until: mostHalves, tenths }]
const half = (one: Tenths, two: Tenths, twoHalf: Tenths, more: Tenths): readonly TwistStep[] => [
  { until: 2, tenths: one },
  { until: 4, tenths: two },
  { until: 5, tenths: twoHalf },
  { until: 7, tenths: more },
]
const split = (two: Tenths, more: Tenths): readonly TwistStep[] => [
  { until: 4, tenths: two },
  { until: 7, tenths: more },
]

/** C: twists, by half twists 1–9 at index 0–8. Starred throughout: all past 1 twist changed in September 2009. */
export const twists: Readonly<Record<Direction, readonly (readonly TwistStep[])[]>> = {
  forward: [half(4, 4, 4, 4), any(6), split(8, 8), any(10), split(12, 12), any(15), any(16), any(19), any(20)],
  back: [half(2, 4, 0, 0), any(4), split(8, 7), any(8), split(12, 11), any(14), any(17), any(18), any(21)],
  reverse: [half(2, 4, 0, 0), any(4), split(8, 6), any(8), split(12, 10), any(14), any(18), any(18), any(21)],
  inward: [half(2, 4, 2, 4), any(4), split(8, 8), any(8), split(12, 12), any(15), any(16), any(19), any(20)],
}

/** D: approach; `high` from `from` half somersaults on. Starred: the high values at 1 m (confirmed by results at 3 m). */
interface ApproachCell {
  readonly low: Tenths
  readonly from: number
  readonly high: Tenths
}
/** Component D, approach: integer tenths by height, direction and somersaults. */
export const approach: Readonly<Record<SpringboardHeight, Readonly<Record<Direction, ApproachCell>>>> = {
  1: {
    forward: { low: 0, from: 8, high: 5 },
    back: { low: 2, from: 7, high: 6 },
    reverse: { low: 3, from: 7, high: 5 },
    inward: { low: 6, from: 3, high: 5 },
  },
  3: {
    forward: { low: 0, from: 8, high: 3 },
    back: { low: 2, from: 7, high: 4 },
    reverse: { low: 3, from: 7, high: 3 },
    inward: { low: 3, from: 3, high: 3 },
  },
}

const towards = [0, 0, 1, 0, 2, 0, 2, 0, 2, 0]
const away = [0, 1, 0, 2, 0, 3, 0, 4, 0, 4]

/** E: unnatural entry of a dive without twist, by half somersaults 0–9; 0 on every dive with a twist. */
export const unnaturalEntry: Readonly<Record<Direction, readonly Tenths[]>> = {
  forward: towards,
  inward: towards,
  back: away,
  reverse: away,
}
