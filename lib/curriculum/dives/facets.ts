import type { Direction, Dive, DiveFacets, EntryWay, Facing, Sense } from './model'

const facings: Readonly<Record<Direction, Facing>> = { forward: 'out', reverse: 'out', back: 'in', inward: 'in' }

const senses: Readonly<Record<Direction, Sense>> = {
  forward: 'forwards',
  inward: 'forwards',
  back: 'backwards',
  reverse: 'backwards',
}

function entryWay(dive: Dive): EntryWay {
  // Common practice, no published source: an armstand starts head down, so it is whole somersaults that end head down.
  const startsHeadUp = dive.family !== 'armstand'
  return (dive.halfSomersaults % 2 === 1) === startsHeadUp ? 'head-first' : 'feet-first'
}

/** What a dive number implies. The approach does not follow from it: a skill states that. */
export function facetsOf(dive: Dive): DiveFacets {
  const sense = senses[dive.direction]
  return {
    family: dive.family,
    direction: dive.direction,
    facing: dive.family === 'armstand' ? null : facings[dive.direction],
    sense,
    halfSomersaults: dive.halfSomersaults,
    halfTwists: dive.halfTwists,
    flying: dive.flying,
    position: dive.position,
    enters: entryWay(dive),
    entrySide: (sense === 'forwards') === (dive.halfTwists % 2 === 0) ? 'front' : 'back',
  }
}
