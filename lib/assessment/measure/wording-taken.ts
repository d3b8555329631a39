import { type MeasureUnit, measureFacts } from '../../curriculum/measure/model'
import { listed } from '../readiness/grammar'
import type { RangeBasis } from './plausible'
import type { Problem } from './problem'
import type { Result, ResultName } from './take'
import type { Slot, TakenKind, UprightKind } from './taken'

/** What there is to measure, as a coach chooses it. */
export const takenName: Readonly<Record<TakenKind, string>> = {
  tilt: 'Tilt of the body’s line',
  arms: 'Arms',
  hip: 'Angle at the hip',
  distance: 'Distance from the tip',
  turn: 'Turn between two frames',
  flight: 'Flight',
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
  'length from': 'known length, one end',
  'length to': 'known length, other end',
  'plumb top': 'upright, top',
  'plumb bottom': 'upright, bottom',
  'edge left': 'board’s edge, left',
  'edge right': 'board’s edge, right',
}

/** What a number says. */
export const resultName: Readonly<Record<ResultName, string>> = {
  bodyTilt: 'from the vertical',
  armAngle: 'arms from the vertical',
  clockHour: 'on the clock face',
  hipAngle: 'at the hip',
  distanceFromTip: 'level from the tip',
  rotationRate: 'turn',
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

const sided: readonly ResultName[] = ['bodyTilt', 'armAngle', 'rotationRate']

/** A result with its unit; what has a side says it, as the camera sees it: "7.1° clockwise". */
export function sayValue({ what, value }: Pick<Result, 'what' | 'value'>): string {
  const { symbol, digits } = unitOf(what)
  if (!sided.includes(what)) return `${figure(value, digits)}${symbol}`
  const side = Number(value.toFixed(digits)) === 0 ? '' : value > 0 ? ' clockwise' : ' anticlockwise'
  return `${figure(Math.abs(value), digits)}${symbol}${side}`
}

/** From the least to the most, with the unit: "5.2° to 9.0°"; signs are clockwise. */
export function sayInterval({ what }: Pick<Result, 'what'>, { low, high }: { low: number; high: number }): string {
  const { symbol, digits } = unitOf(what)
  return `${figure(low, digits)} to ${figure(high, digits)}${symbol}`
}

/** Where a plausible range comes from. */
export const basisName: Readonly<Record<RangeBasis, string>> = {
  judgement: 'our judgement',
  memory: 'from memory, no source',
  geometry: 'by geometry',
}

/** Beside a result that lies outside what can be expected. */
export const checkPoints = 'Outside what can be expected: check the points.'

/** Beside a tilt whose points lie along no line. */
export const bentLine = 'The points lie far from any one line: the body is bent, and its tilt says little.'

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
  'no board': () => 'A flight is measured from a board: this skill is not done from one.',
  order: ({ first }) => orders[first],
  'frame unknown': () =>
    'How long one frame of this film lasts is not known. Step a few frames, then place the points or mark again.',
  drop: () => 'The drop is 0 m to 15 m, give or take at most 2 m.',
}

/** Why nothing was measured, and what to do. */
export const sayProblem = <Kind extends Problem['kind']>(problem: Extract<Problem, { kind: Kind }>): string =>
  says[problem.kind as Kind](problem)
