import {
  approach,
  flightBands,
  flightPosition,
  flying,
  mostHalves,
  type SpringboardHeight,
  somersaults,
  type Tenths,
  twists,
  unnaturalEntry,
} from './components'
import type { Dive } from './model'
import { countHalves, positionNames, writeHalves } from './name'
import { type DiveError, type Refusal, refuse } from './refusal'

/** The difficulty in integer tenths, or why the dive has none at that height. */
export type Difficulty =
  | { readonly ok: true; readonly tenths: Tenths }
  | { readonly ok: false; readonly error: DiveError }

/** Whether a dive can be done at a height, and if not why. */
export type Validity = { readonly ok: true } | { readonly ok: false; readonly error: DiveError }

const somersaulting = (dive: Dive): string => `${dive.direction} ${countHalves(dive.halfSomersaults, 'somersault')}`

/** C, or null where the table has no column for these twists with these somersaults. */
function twistTenths({ direction, halfSomersaults, halfTwists }: Dive): Tenths | null {
  if (halfTwists === 0) return 0
  const steps = twists[direction][halfTwists - 1] ?? []
  return steps.find((step) => halfSomersaults <= step.until)?.tenths ?? null
}

/** A + B (+ fly) + C + D + E, or why one of them does not exist. */
function sum(dive: Dive, height: SpringboardHeight): Tenths | Refusal {
  const { direction, halfSomersaults, position } = dive
  if (dive.family === 'armstand')
    return refuse('platform only', 'an armstand dive starts from a platform, not from a springboard')
  const a = somersaults[height][halfSomersaults]
  const band = flightBands[halfSomersaults]
  const e = dive.halfTwists === 0 ? unnaturalEntry[direction][halfSomersaults] : 0
  if (a === undefined || band === undefined || e === undefined)
    return refuse(
      'beyond the tables',
      `the difficulty tables end at ${countHalves(mostHalves, 'somersault')} and this dive has ${writeHalves(halfSomersaults)}`,
    )
  const b = flightPosition[position][direction][band]
  if (b === null)
    return refuse('not possible', `the difficulty tables have no ${somersaulting(dive)} ${positionNames[position]}`)
  const fly = dive.flying ? flying[direction][band] : 0
  if (fly === null) return refuse('not possible', `the difficulty tables have no flying ${somersaulting(dive)}`)
  const c = twistTenths(dive)
  if (c === null)
    return refuse(
      'not possible',
      `the difficulty tables have no ${somersaulting(dive)} with ${countHalves(dive.halfTwists, 'twist')}`,
    )
  const { low, from, high } = approach[height][direction]
  return a + b + fly + c + (halfSomersaults < from ? low : high) + e
}

/**
 * Degree of difficulty on a springboard in integer tenths, by the component formula of the World Aquatics Competition
 * Regulations, Part Four (DV 3.2–3.4). A dive that the formula has no cell for is refused for that height, with the reason.
 */
export function difficultyTenths(dive: Dive, height: SpringboardHeight): Difficulty {
  const tenths = sum(dive, height)
  if (typeof tenths === 'number') return { ok: true, tenths }
  const message = `${dive.canonical} cannot be done at ${height} m: ${tenths.message}`
  return { ok: false, error: { code: tenths.code, message, text: dive.canonical } }
}

/** Whether a dive can be done at a height: any dive that the formula gives a difficulty may be used (DV 3.4). */
export function validAt(dive: Dive, height: SpringboardHeight): Validity {
  const difficulty = difficultyTenths(dive, height)
  return difficulty.ok ? { ok: true } : difficulty
}

/** Tenths as they are written: 14 → `1.4`. */
export const formatTenths = (tenths: Tenths): string => (tenths / 10).toFixed(1)
