import type { PhaseSet } from '@/lib/curriculum/model'

/** A place on the diagram before it is drawn: `c` counts columns from the first (0), `z` metres over the water. */
export interface Place {
  readonly c: number
  readonly z: number
}

/** A cubic Bézier piece of the course, its end points and the two controls between them. */
export type Piece = readonly [Place, Place, Place, Place]

/** The whole course of a dive, from the first phase on the board to the last under water. */
export interface Course {
  readonly pieces: readonly Piece[]
  readonly over: number
  readonly top: number
  /** Columns of the last contact and of the entry. */
  readonly leave: number
  readonly entry: number
}

/** Metres that every drawn dive rises over its board: one assumption, so that only the height makes courses differ. */
const riseFromBoard = 1.2
const riseFromDeck = 0.3
/** A fall is no jump: it only tips over. */
const riseInFall = 0.03
const deckHeight = 0.3
export const divingDepth = 1.15
/** How far a pressed board is drawn down, and how high the hurdle goes. */
const press = 0.42
const hop = 0.5

/** Height of a place key over the water in metres; null where there is no water below. */
export function heightOver(place: string): number | null {
  if (place === 'poolside') return deckHeight
  const metres = /^(\d+(?:\.\d+)?)m$/.exec(place)?.[1]
  return metres === undefined ? null : Number(metres)
}

/**
 * The course of a dive over its columns; null where there is none to draw (floor drills, dry places).
 * Columns pass evenly with time in the air, so the flight is a true parabola that meets each phase over its column.
 */
export function plotCourse(variant: PhaseSet, place: string, phases: readonly string[]): Course | null {
  const over = heightOver(place)
  // A fall begins standing: its first phase is the last contact.
  const leave = variant === 'fall-in' ? 0 : phases.indexOf('take-off')
  const entry = phases.indexOf('entry')
  if (over === null || variant === 'drill' || leave < 0 || entry <= leave) return null

  const springs = place !== 'poolside' && variant !== 'fall-in'
  const rise = springs ? riseFromBoard : variant === 'fall-in' ? riseInFall : riseFromDeck
  const span = entry - leave
  const apex = (span * Math.sqrt(rise)) / (Math.sqrt(rise) + Math.sqrt(rise + over))
  const climb = (2 * rise) / apex
  const plunge = (2 * (rise + over)) / (span - apex)
  const third = span / 3
  const flight: Piece = [
    { c: leave, z: over },
    { c: leave + third, z: over + climb * third },
    { c: entry - third, z: plunge * third },
    { c: entry, z: 0 },
  ]
  const under = phases.indexOf('under water')
  const pieces = [...onBoard(phases, leave, over, springs ? climb : 0), flight, ...underWater(entry, under, plunge)]
  return { pieces, over, top: over + rise, leave, entry }
}

/** What happens before the last contact: a hurdle hops, a springboard is pressed down and throws with slope `climb`. */
function onBoard(phases: readonly string[], leave: number, over: number, climb: number): readonly Piece[] {
  if (leave === 0) return []
  if (climb === 0) return [level(0, leave, over)]
  const runs = phases.indexOf('hurdle')
  const from = runs < 0 ? 0 : runs + 0.6
  const reach = Math.min((leave - from) / 3, press / (0.4 * climb))
  const drop = runs < 0 ? 0 : (2 * hop) / 0.6
  const pressed: Piece = [
    { c: from, z: over },
    { c: from + (runs < 0 ? 0.6 : 0.3), z: over - drop * 0.3 },
    { c: leave - reach, z: over - climb * reach },
    { c: leave, z: over },
  ]
  if (runs < 0) return [pressed]
  const hurdle: Piece = [
    { c: runs - 0.6, z: over },
    { c: runs - 0.2, z: over + (4 / 3) * hop },
    { c: runs + 0.2, z: over + (4 / 3) * hop },
    { c: runs + 0.6, z: over },
  ]
  return [level(0, runs - 0.6, over), hurdle, pressed]
}

const level = (from: number, to: number, z: number): Piece => [
  { c: from, z },
  { c: from + (to - from) / 3, z },
  { c: to - (to - from) / 3, z },
  { c: to, z },
]

/** On in the line of the entry, then levelling out. */
function underWater(entry: number, under: number, plunge: number): readonly Piece[] {
  if (under <= entry) return []
  const reach = Math.min(0.5, (0.9 * divingDepth) / plunge)
  return [
    [
      { c: entry, z: 0 },
      { c: entry + reach, z: -plunge * reach },
      { c: under - 0.35, z: -divingDepth },
      { c: under, z: -divingDepth },
    ],
  ]
}

const mix = ([a, b, c, d]: readonly [number, number, number, number], t: number): number =>
  (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * c + t ** 3 * d

/** Height of the course over a column; NaN outside it. */
export function heightAt(course: Course, c: number): number {
  const piece = course.pieces.find(([from, , , to]) => from.c <= c && c <= to.c)
  if (!piece) return Number.NaN
  const [p, q, r, s] = piece
  let [low, high] = [0, 1]
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2
    if (mix([p.c, q.c, r.c, s.c], middle) < c) low = middle
    else high = middle
  }
  return mix([p.z, q.z, r.z, s.z], (low + high) / 2)
}
