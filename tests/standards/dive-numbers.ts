import fc from 'fast-check'

const digit = (min: number, max: number) => fc.integer({ min, max })

/** Positions that a twisting dive may take, by its half somersaults (note to the twist table). */
const twistingPosition = (halves: number) => fc.constantFrom(...(halves === 1 ? 'ABC' : halves <= 3 ? 'D' : 'BC'))

const plain = fc
  .tuple(digit(1, 4), fc.oneof(digit(1, 9), digit(10, 99)), fc.constantFrom('A', 'B', 'C'))
  .map(([group, halves, position]) => `${group}0${halves}${position}`)

const flying = fc
  .tuple(digit(1, 4), digit(2, 12), fc.constantFrom('B', 'C'))
  .map(([group, halves, position]) => `${group}1${halves}${position}`)

const twisting = digit(1, 9).chain((halves) =>
  fc
    .tuple(digit(1, 4), digit(1, 9), twistingPosition(halves))
    .map(([direction, twists, position]) => `5${direction}${halves}${twists}${position}`),
)

const armstand = fc.oneof(
  fc.constantFrom('A', 'B', 'C').map((position) => `600${position}`),
  fc
    .tuple(digit(1, 3), digit(1, 9), fc.constantFrom('A', 'B', 'C'))
    .map(([direction, halves, position]) => `6${direction}${halves}${position}`),
  fc
    .tuple(digit(1, 3), digit(1, 9), digit(1, 9), fc.constantFrom('A', 'B', 'C', 'D'))
    .map(([direction, halves, twists, position]) => `6${direction}${halves}${twists}${position}`),
)

/** Canonical dive numbers, written from the grammar (DV 2) and not by the code under test. */
export const diveNumbers = fc.oneof(plain, flying, twisting, armstand)
