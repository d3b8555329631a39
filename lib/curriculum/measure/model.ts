/** Units in which a measure is stated. */
export const measureUnits = ['degrees', 'metres', 'seconds', 'metres a second', 'degrees a second'] as const
export type MeasureUnit = (typeof measureUnits)[number]

/** What can be read off a paused film by points that a coach places, and times. How is `lib/assessment/measure`'s business. */
export const measureNames = [
  'bodyTilt',
  'armAngle',
  'hipAngle',
  'distanceFromTip',
  'rotationRate',
  'flightTime',
  'takeOffSpeed',
  'rise',
  'entrySpeed',
] as const
export type MeasureName = (typeof measureNames)[number]

const dryPhases = ['set-up', 'movement', 'finish'] as const
const boardPhases = ['hurdle', 'stance', 'press', 'take-off'] as const
const airPhases = ['flight', 'twist start', 'twist stop', 'come-out'] as const
/** The highest point; while the diver passes the board on the way down; from the last contact to the water. */
export const besidePhases = ['highest point', 'passing', 'whole flight'] as const
/** When a measure is taken: at the mark with which a phase begins, or at one of those that are no phase. */
export const measureInstants = [...dryPhases, ...boardPhases, ...airPhases, 'entry', ...besidePhases] as const
export type MeasureInstant = (typeof measureInstants)[number]

/** The values that earn a rating, both ends inclusive and at least one of them stated, in the measure's unit. */
export interface Band {
  readonly least?: number
  readonly most?: number
}

/** Ratings that a value can earn; one that lies in no band earns 0. */
export const bandRatings = [1, 2, 3, 4] as const
export type BandRating = (typeof bandRatings)[number]

/** The band of each rating. Each lies inside the one below it: who earns a 3 would have earned a 2. */
export type Bands = Readonly<Record<BandRating, Band>>

/** Where bands come from: the programme's own judgement, what is remembered without a source at hand, or what was published. */
export const bandBases = ['judgement', 'memory', 'published'] as const
export type BandBasis = (typeof bandBases)[number]

/**
 * What may be measured for a criterion, and which rating a value suggests; the coach decides. Angles and rates that have a side
 * are judged by their size: 10° either way from the vertical is 10.
 */
export interface AskedMeasure {
  readonly what: MeasureName
  readonly at: MeasureInstant
  readonly unit: MeasureUnit
  readonly bands: Bands
  readonly basis: BandBasis
  /** What was published, and where; null unless the basis is `published`. */
  readonly source: string | null
}

/** What follows from the name of a measure. */
export interface MeasureFacts {
  readonly unit: MeasureUnit
  /** Least and greatest size that it can have, in its unit. */
  readonly sizes: readonly [least: number, most: number]
  /** When taking it makes sense. */
  readonly instants: readonly MeasureInstant[]
  /** It needs a board over water: a tip to be far from, or a flight from a known height. */
  readonly needsBoard: boolean
}

const ofFlight = (unit: MeasureUnit, most: number): MeasureFacts => ({
  unit,
  sizes: [0, most],
  instants: ['whole flight'],
  needsBoard: true,
})

/**
 * The facts of every measure. The body's tilt is not asked on the board or in the air: there a lean is safe to one side only,
 * and a size does not tell which.
 */
export const measureFacts: Readonly<Record<MeasureName, MeasureFacts>> = {
  bodyTilt: { unit: 'degrees', sizes: [0, 90], instants: [...dryPhases, 'entry'], needsBoard: false },
  armAngle: { unit: 'degrees', sizes: [0, 180], instants: [...dryPhases, ...boardPhases, 'flight'], needsBoard: false },
  hipAngle: {
    unit: 'degrees',
    sizes: [0, 180],
    instants: [...dryPhases, ...boardPhases, ...airPhases, 'highest point', 'entry'],
    needsBoard: false,
  },
  distanceFromTip: {
    unit: 'metres',
    sizes: [0, 10],
    instants: ['highest point', 'passing', 'come-out', 'entry'],
    needsBoard: true,
  },
  rotationRate: {
    unit: 'degrees a second',
    sizes: [0, 3600],
    instants: [...airPhases, 'highest point'],
    needsBoard: false,
  },
  flightTime: ofFlight('seconds', 5),
  takeOffSpeed: ofFlight('metres a second', 20),
  rise: ofFlight('metres', 10),
  entrySpeed: ofFlight('metres a second', 20),
}
