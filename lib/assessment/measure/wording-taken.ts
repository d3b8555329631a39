import { type MeasureUnit, measureFacts } from '../../curriculum/measure/model'
import { listed } from '../readiness/grammar'
import type { RangeBasis } from './plausible'
import type { Problem } from './problem'
import type { Caution, Result, ResultName } from './take'
import type { Slot, Taken, TakenKind, UprightKind } from './taken'

/** What there is to measure, as a coach chooses it. */
export const takenName: Readonly<Record<TakenKind, string>> = {
  tilt: 'Tilt of the body’s line',
  arms: 'Arms',
  hip: 'Angle at the hip',
  distance: 'Distance from the tip',
  turn: 'Turn between two frames',
  flight: 'Flight',
}

/** What was measured, in words: "Arms, from straight down". */
export const nameTaken = ({ kind, down }: { readonly kind: TakenKind; readonly down: boolean }): string =>
  `${takenName[kind]}${kind === 'arms' && down ? ', from straight down' : ''}`

/** The same of a measure that was kept. */
export const nameKept = (taken: Taken): string =>
  nameTaken({ kind: taken.kind, down: taken.kind !== 'flight' && taken.down })

/** On which frame a measure is taken, and how, where its points alone do not say it. */
export const takenHint: Partial<Readonly<Record<TakenKind, string>>> = {
  distance:
    'Read it on the frame in which the body passes the level of the board on the way down, at the part that is nearest to the tip there. A point on the board, further in than its tip, tells which side is the water.',
  turn: 'Choose two frames less than half a turn apart: from the points alone, more looks like less the other way round.',
}

/** How the upright is known, as a coach chooses it. */
export const uprightName: Readonly<Record<UprightKind, string>> = {
  picture: 'the camera, ±2°',
  plumb: 'a plumb line',
  level: 'the board at rest',
}

/** What to place. */
export const slotName: Readonly<Record<Slot, string>> = {
  ankle: 'ankle',
  hip: 'hip',
  shoulder: 'shoulder',
  head: 'head',
  hand: 'hand',
  near: 'nearest part of the body',
  'later hip': 'hip, later',
  'later shoulder': 'shoulder, later',
  tip: 'tip of the board',
  board: 'board, further in',
  'length from': 'known length, one end',
  'length to': 'known length, other end',
  'plumb top': 'upright, top',
  'plumb bottom': 'upright, bottom',
  'edge left': 'board’s edge, left',
  'edge right': 'board’s edge, right',
}

/** Points that were dropped as another was placed on another frame, and what to do. */
export const sayDropped = (dropped: readonly Slot[]): string =>
  `Dropped, since they were on another frame: ${listed(dropped.map((slot) => slotName[slot]))}. Undo brings them back.`

/** What a number says. */
export const resultName: Readonly<Record<ResultName, string>> = {
  bodyTilt: 'from the vertical',
  armAngle: 'arms from the vertical',
  clockHour: 'on the clock face',
  hipAngle: 'at the hip',
  distanceFromTip: 'measured level from the tip',
  heightOverTip: 'the level of the board',
  rotationRate: 'rate of turn',
  turned: 'between the frames',
  flightTime: 'in the air',
  takeOffSpeed: 'upwards at take-off',
  rise: 'height gained',
  entrySpeed: 'at the water',
  takeOffSpeedByPeak: 'upwards, by the highest point',
  dropByPeak: 'drop that the times imply',
}

interface Unit {
  readonly symbol: string
  readonly digits: number
}

const units: Readonly<Record<MeasureUnit, Unit>> = {
  degrees: { symbol: '°', digits: 1 },
  metres: { symbol: ' m', digits: 2 },
  seconds: { symbol: ' s', digits: 3 },
  'metres a second': { symbol: ' m/s', digits: 2 },
  'degrees a second': { symbol: '°/s', digits: 0 },
}

const extra = {
  clockHour: { symbol: ' o’clock', digits: 1 },
  heightOverTip: units.metres,
  turned: units.degrees,
  takeOffSpeedByPeak: units['metres a second'],
  dropByPeak: units.metres,
}

const unitOf = (what: ResultName): Unit =>
  what in extra ? extra[what as keyof typeof extra] : units[measureFacts[what as keyof typeof measureFacts].unit]

/** A minus that is as wide as a plus, and no nought with one. */
const figure = (value: number, digits: number): string => {
  const text = value.toFixed(digits)
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')
}

/** An hour as a clock has it, from 1.0 to 12.9: what is short of one is past twelve. */
function hour(value: number, digits: number): string {
  const rounded = Number(value.toFixed(digits))
  const onFace = ((rounded % 12) + 12) % 12
  return (onFace < 1 ? onFace + 12 : onFace).toFixed(digits)
}

const written = (what: ResultName, value: number): string =>
  what === 'clockHour' ? hour(value, extra.clockHour.digits) : figure(value, unitOf(what).digits)

/** What a value above nought is called and one below it, as the camera sees it or as the board lies. */
const turns = ['clockwise', 'anticlockwise'] as const
const sides: Partial<Readonly<Record<ResultName, readonly [above: string, below: string]>>> = {
  bodyTilt: turns,
  armAngle: turns,
  rotationRate: turns,
  turned: turns,
  distanceFromTip: ['', 'over the board'],
  heightOverTip: ['above', 'below'],
}

/** A result with its unit; what has a side says it: "7.1° clockwise", "0.20 m over the board". */
export function sayValue({ what, value }: Pick<Result, 'what' | 'value'>): string {
  const { symbol, digits } = unitOf(what)
  const names = sides[what]
  if (!names) return `${written(what, value)}${symbol}`
  const side = Number(value.toFixed(digits)) === 0 ? '' : value > 0 ? names[0] : names[1]
  return `${figure(Math.abs(value), digits)}${symbol}${side && ` ${side}`}`
}

/** From the least to the most, with the unit: "5.2 to 9.0°"; what is below nought has the other side. */
export function sayInterval({ what }: Pick<Result, 'what'>, { low, high }: { low: number; high: number }): string {
  return `${written(what, low)} to ${written(what, high)}${unitOf(what).symbol}`
}

/** What the points of two frames say as well, when more than half a turn lies between them: "216.0° clockwise". */
export const sayOtherWay = ({ value }: Pick<Result, 'value'>): string =>
  sayValue({ what: 'turned', value: value > 0 ? value - 360 : value + 360 })

/** Where a plausible range comes from. */
export const basisName: Readonly<Record<RangeBasis, string>> = {
  judgement: 'our judgement',
  memory: 'from memory, no source',
  geometry: 'by geometry',
}

/** Beside a result that lies outside what can be expected. */
export const checkPoints = 'Outside what can be expected: check the points.'

/** What to look at again, though it was measured. */
export const sayCaution: Readonly<Record<Caution, string>> = {
  bent: 'The points lie far from any one line: the body is bent, and its tilt says little.',
  'upright askew': 'The upright lies more than 20° off that of the picture: check its two ends.',
  'behind the tip':
    'Behind the tip, where the board is: unsafe as the body passes it, if the points stand. Below 0 m is behind the tip.',
  'not passing': 'Not where the body passes the level of the board: how clear of it the dive was is read there.',
  'side unknown':
    'Kept without a point on the board: nobody knows on which side of the tip the body was. Measure it again.',
}

const orders = {
  frame: 'Step to a later frame for the second pair of points.',
  flight: 'The mark “entry” must come after the mark “flight”. Change the marks first.',
  'highest point': 'The mark “highest point” must lie between “flight” and “entry”. Change it, or take it back.',
} as const

const says: { readonly [Kind in Problem['kind']]: (problem: Extract<Problem, { kind: Kind }>) => string } = {
  missing: ({ slots }) => `Still to place: ${listed(slots.map((slot) => slotName[slot]))}.`,
  'too few': () => 'A line needs two points or more: place two of ankle, hip, shoulder and head.',
  outside: ({ slot }) => `“${slotName[slot]}” lies outside the picture. Place it again.`,
  'too close': ({ one, other, apart, least }) =>
    `“${slotName[one]}” and “${slotName[other]}” are ${apart.toFixed(0)} pixels apart, and a direction needs ${least.toFixed(0)}. Place them again, or say that you place points more exactly.`,
  length: () => 'Say how long the known length is, in metres: more than 0, at most 20.',
  side: () =>
    '“board, further in” does not tell which side is the water: place it on the board, well behind its tip and about as high.',
  'no board': () => 'A flight is measured from a board: this skill is not done from one.',
  order: ({ first }) => orders[first],
  'frame unknown': () =>
    'How long one frame of this film lasts is not known. Step a few frames, then place the points or mark again.',
  drop: () => 'The drop is 0 m to 15 m, give or take at most 2 m.',
}

/** Why nothing was measured, and what to do. */
export const sayProblem = <Kind extends Problem['kind']>(problem: Extract<Problem, { kind: Kind }>): string =>
  says[problem.kind as Kind](problem)
