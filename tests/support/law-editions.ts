import fc from 'fast-check'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import type { EditionDocument, Standard } from '@/lib/curriculum/model'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { tinyEdition, tinyStandard } from '@/tests/support/tiny-edition'
import { anEvent, aPart } from './dive-events'
import { curriculumOf } from './small-coast'

const watched: Requirement = {
  kind: 'criterion',
  criterion: 'upright',
  at: [
    { skill: 'jump', place: '1m' },
    { skill: '101C', place: '1m' },
  ],
  rating: 3,
  times: 2,
  of: 4,
  withinDays: 40,
}
const locked: Requirement = { ...watched, criterion: 'hands-locked', at: [{ skill: '101C', place: '1m' }], times: 1 }
const either: Requirement = {
  kind: 'any',
  of: [
    { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'two' },
    {
      kind: 'all',
      of: [{ kind: 'signOff', skill: 'tread', place: 'poolside' }, watched],
    },
  ],
}

const entered: Requirement = {
  kind: 'any',
  of: [
    { kind: 'diveList', event: 'trophy' },
    { kind: 'diveList', event: 'friendly' },
  ],
}
const events = [
  anEvent('3m', [aPart(2, 1, 30)]),
  anEvent('1m', [aPart(1)], { key: 'friendly', ageBand: { from: 9, to: null } }),
]

/** The small edition with what makes laws hard: rising critical expectations, choices, criterion leaves, certainty, a dive list. */
export const hardEdition = (standard: Standard): EditionDocument => {
  const edition = tinyEdition({ standard })
  return {
    ...edition,
    criteria: edition.criteria.map((criterion) =>
      criterion.key === 'safe-distance'
        ? {
            ...criterion,
            expects: [
              { level: 'one', rating: 3 },
              { level: 'three', rating: 4 },
            ],
          }
        : criterion,
    ),
    skills: edition.skills.map((skill) => ({
      ...skill,
      places: skill.places.map((at) =>
        skill.key === 'jump' && at.place === '3m'
          ? { ...at, prerequisite: either }
          : skill.key === '101C' && at.place === '1m'
            ? { ...at, standard: { certainty: { rate: 0.4, at: 0.5, over: 4 } } }
            : at,
      ),
    })),
    levels: edition.levels.map((level) =>
      level.key === 'two'
        ? { ...level, requirement: { kind: 'all', of: [level.requirement, either, locked] } }
        : level.key === 'three'
          ? { ...level, requirement: { kind: 'atLeast', n: 1, of: [level.requirement, entered] } }
          : level,
    ),
    events,
  }
}

/** Editions whose standards differ in everything that counts or is counted. */
export const anyEdition: fc.Arbitrary<Curriculum> = fc
  .record({
    of: fc.integer({ min: 1, max: 4 }),
    short: fc.nat(2),
    coaches: fc.integer({ min: 1, max: 2 }),
    days: fc.integer({ min: 1, max: 2 }),
    moments: fc.nat(1),
    withinDays: fc.constantFrom(20, 60, 200),
    clean: fc.integer({ min: 1, max: 3 }),
    slack: fc.constantFrom(null, 0, 3),
    validForDays: fc.constantFrom(30, 90, 180),
    again: fc.integer({ min: 1, max: 3 }),
    recheckWithinDays: fc.constantFrom(10, 60),
  })
  .map(({ of, short, again, ...rest }) =>
    curriculumOf(
      hardEdition({
        ...tinyStandard,
        ...rest,
        of,
        successes: Math.max(1, of - short),
        recheck: { successes: Math.min(2, again), of: again },
      }),
    ),
  )
