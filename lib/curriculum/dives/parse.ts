import { type Direction, type Dive, type Family, families, type Position, positions } from './model'
import { type DiveError, type Refusal, refuse } from './refusal'

/** The dive, or what is wrong with the text. */
export type DiveResult = { readonly ok: true; readonly dive: Dive } | { readonly ok: false; readonly error: DiveError }

/** Everything that the digits say, before the position letter. */
type Shape = Omit<Dive, 'canonical' | 'position'>

/** In the order of the digit that writes them, 1–4. */
const directions = ['forward', 'back', 'reverse', 'inward'] as const satisfies readonly Direction[]

/** How many digits each group takes (FINA Diving Rules 2017–21 D 1.5; World Aquatics DV 2). */
const digitCounts: Readonly<Record<Family, { readonly allowed: readonly number[]; readonly say: string }>> = {
  forward: { allowed: [3, 4], say: 'three or four digits' },
  back: { allowed: [3, 4], say: 'three or four digits' },
  reverse: { allowed: [3, 4], say: 'three or four digits' },
  inward: { allowed: [3, 4], say: 'three or four digits' },
  twisting: { allowed: [4], say: 'four digits: group, direction, half somersaults, half twists' },
  armstand: { allowed: [3, 4], say: 'three digits, or four with a twist' },
}

const isRefusal = (value: Shape | Refusal): value is Refusal => 'code' in value

/** Groups 1–4: group, 0 or 1 for flying, half somersaults in one digit, or in two above 4½ (1011 is 5½). */
function readPlain(direction: Direction, digits: string): Shape | Refusal {
  const flying = digits.charAt(1)
  const halves = digits.slice(2)
  const halfSomersaults = Number(halves)
  if (flying !== '0' && flying !== '1')
    return refuse(
      'flying digit',
      `the second digit of group ${digits.charAt(0)} is 0, or 1 for flying; it is ${flying}`,
    )
  if (halfSomersaults === 0)
    return refuse('somersaults', 'the digits after the second count half somersaults; at least 1 is needed')
  if (halves.length === 2 && halfSomersaults < 10)
    return refuse(
      'somersaults',
      `four digits are for more than 4½ somersaults; write ${digits.slice(0, 2)}${halfSomersaults}`,
    )
  // From memory of the rules: a flying dive shows a straight flight first, for which half a somersault leaves no time.
  if (flying === '1' && halfSomersaults === 1)
    return refuse('flying', 'a flying dive needs at least one somersault, so its third digit is 2 or more')
  return { family: direction, direction, flying: flying === '1', halfSomersaults, halfTwists: 0 }
}

/** Group 5: group, direction 1–4, half somersaults, half twists. */
function readTwisting(digits: string): Shape | Refusal {
  const direction = directions[Number(digits.charAt(1)) - 1]
  const halfSomersaults = Number(digits.charAt(2))
  const halfTwists = Number(digits.charAt(3))
  if (!direction)
    return refuse(
      'unknown direction',
      `the second digit of a twisting dive is its direction, 1 forward to 4 inward; ${digits.charAt(1)} does not exist`,
    )
  if (halfSomersaults === 0)
    return refuse('somersaults', 'the third digit of a twisting dive counts half somersaults and is 1 to 9')
  if (halfTwists === 0)
    return refuse(
      'twists',
      `the fourth digit counts half twists and is 1 to 9; without a twist write ${digits.charAt(1)}0${halfSomersaults}`,
    )
  return { family: 'twisting', direction, flying: false, halfSomersaults, halfTwists }
}

/** Group 6: group, direction 0–3, half somersaults, and half twists when there are any. */
function readArmstand(digits: string): Shape | Refusal {
  const given = Number(digits.charAt(1))
  const direction = given === 0 ? 'forward' : directions[given - 1]
  const halfSomersaults = Number(digits.charAt(2))
  if (!direction || direction === 'inward')
    return refuse(
      'unknown direction',
      `the second digit of an armstand dive is 0 for none, 1 forward, 2 back or 3 reverse; ${given} does not exist`,
    )
  if ((given === 0) !== (halfSomersaults === 0))
    return refuse('somersaults', 'an armstand dive has a direction and half somersaults, or 0 for both')
  if (digits.length === 4 && digits.endsWith('0'))
    return refuse(
      'twists',
      `the fourth digit counts half twists and is 1 to 9; without a twist write ${digits.slice(0, 3)}`,
    )
  return { family: 'armstand', direction, flying: false, halfSomersaults, halfTwists: Number(digits.slice(3)) }
}

function readDigits(family: Family, digits: string): Shape | Refusal {
  if (family === 'twisting') return readTwisting(digits)
  if (family === 'armstand') return readArmstand(digits)
  return readPlain(family, digits)
}

/** Positions of a twisting dive: A, B, C with ½ somersault; D with 1 or 1½; B or C with 2 or more (note to the twist table). */
function twistingPositions(halfSomersaults: number): { readonly allowed: string; readonly say: string } {
  if (halfSomersaults === 1) return { allowed: 'ABC', say: '½ somersault takes A, B or C' }
  if (halfSomersaults <= 3) return { allowed: 'D', say: '1 or 1½ somersaults takes D' }
  return { allowed: 'BC', say: '2 or more somersaults takes B or C' }
}

function refusePosition(shape: Shape, position: Position): Refusal | null {
  if (position === 'D' && shape.halfTwists === 0)
    return refuse('free without twist', 'position D (free) is for dives with a twist only; take A, B or C')
  // From memory of the rules; the table of components adds flying to B and C only.
  if (shape.flying && position === 'A') return refuse('flying', 'a flying dive ends in pike or tuck; take B or C')
  if (shape.family !== 'twisting') return null
  const { allowed, say } = twistingPositions(shape.halfSomersaults)
  return allowed.includes(position) ? null : refuse('twist position', `a twisting dive with ${say}, not ${position}`)
}

/** Writes the parts of a dive as its number: upper case, no spaces. The inverse of `parseDive`. */
export function writeDive(parts: Omit<Dive, 'canonical'>): string {
  const { family, halfSomersaults, halfTwists } = parts
  const group = families.indexOf(family) + 1
  if (family !== 'twisting' && family !== 'armstand')
    return `${group}${parts.flying ? 1 : 0}${halfSomersaults}${parts.position}`
  const direction = halfSomersaults === 0 ? 0 : directions.indexOf(parts.direction) + 1
  return `${group}${direction}${halfSomersaults}${halfTwists === 0 ? '' : halfTwists}${parts.position}`
}

function read(compact: string): Dive | Refusal {
  if (compact === '') return refuse('empty', 'no dive number was given; write one such as 103B')
  const [, digits, letter] = /^(\d+)([A-Z]?)$/.exec(compact) ?? []
  if (digits === undefined || letter === undefined)
    return refuse('not a dive number', 'a dive is written as three or four digits and a position letter, such as 103B')
  const group = digits.charAt(0)
  const family = families[Number(group) - 1]
  if (!family)
    return refuse(
      'unknown group',
      `group ${group} does not exist; the first digit is 1 forward, 2 back, 3 reverse, 4 inward, 5 twisting or 6 armstand`,
    )
  const count = digitCounts[family]
  if (!count.allowed.includes(digits.length)) return refuse('digit count', `group ${group} takes ${count.say}`)
  if (letter === '') return refuse('no position', 'the position is missing; add A straight, B pike, C tuck or D free')
  const position = positions.find((known) => known === letter)
  if (!position)
    return refuse('unknown position', `position ${letter} does not exist; it is A straight, B pike, C tuck or D free`)
  const shape = readDigits(family, digits)
  if (isRefusal(shape)) return shape
  const refused = refusePosition(shape, position)
  if (refused) return refused
  const parts = { ...shape, position }
  return { canonical: writeDive(parts), ...parts }
}

/**
 * Reads a dive number as the World Aquatics rules write it (DV 2; FINA Diving Rules 2017–21 D 1.5), in either case and with
 * spaces. Grammar only: whether the dive can be done at a height is `validAt`. Never throws.
 */
export function parseDive(text: string): DiveResult {
  const dive = read(text.replace(/\s/g, '').toUpperCase())
  return 'code' in dive ? { ok: false, error: { ...dive, text } } : { ok: true, dive }
}
