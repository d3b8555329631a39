import type { Dive, Position } from './model'

/** The spoken word for each position letter. */
export const positionNames: Readonly<Record<Position, string>> = { A: 'straight', B: 'pike', C: 'tuck', D: 'free' }

/** A count of halves as it is written: 1 → `½`, 2 → `1`, 5 → `2½`. */
export function writeHalves(halves: number): string {
  const whole = Math.floor(halves / 2)
  return `${whole === 0 && halves > 0 ? '' : whole}${halves % 2 === 1 ? '½' : ''}`
}

/** A count of halves with what is counted: 1 → `½ twist`, 3 → `1½ twists`. */
export const countHalves = (halves: number, noun: string): string =>
  `${writeHalves(halves)} ${noun}${halves > 2 ? 's' : ''}`

/** The movement without its position: `Forward 2½ somersaults`, `Inward dive`, `Flying back somersault`. */
function movement(dive: Dive): string {
  const start = dive.family === 'armstand' ? 'armstand ' : dive.flying ? 'flying ' : ''
  if (dive.halfSomersaults === 0) return `${start}dive`
  // Half a somersault is a dive; of an armstand, which starts head down, it is a plain half somersault.
  const plainDive = dive.halfSomersaults === 1 && dive.family !== 'armstand'
  const turned = plainDive
    ? 'dive'
    : dive.halfSomersaults === 2
      ? 'somersault'
      : countHalves(dive.halfSomersaults, 'somersault')
  return `${start}${dive.direction} ${turned}`
}

/** The dive as a coach says it: `Inward dive, pike`; `Back 1½ somersaults, ½ twist, free`. */
export function spokenName(dive: Dive): string {
  const said = movement(dive)
  const twists = dive.halfTwists === 0 ? [] : [countHalves(dive.halfTwists, 'twist')]
  return [said.charAt(0).toUpperCase() + said.slice(1), ...twists, positionNames[dive.position]].join(', ')
}
