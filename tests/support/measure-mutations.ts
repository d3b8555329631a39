import { phasesOf } from '@/lib/curriculum/edition/attach'
import type { Pointer } from '@/lib/curriculum/edition/pointer'
import type { LintCode } from '@/lib/curriculum/lint/problem'
import type { Subject } from '@/lib/curriculum/lint/subject'
import {
  type AskedMeasure,
  bandRatings,
  besidePhases,
  measureFacts,
  measureInstants,
} from '@/lib/curriculum/measure/model'
import type { Criterion } from '@/lib/curriculum/model'
import { anAskedMeasure } from './asked-measures'
import { eachOf, type Mutate, type Mutation, set } from './mutation'

const eachMeasure = (
  s: Subject,
  mutate: (measure: AskedMeasure, path: Pointer, criterion: Criterion) => Mutation[],
): Mutation[] =>
  eachOf(s, 'criteria', (criterion, path) =>
    criterion.measure ? mutate(criterion.measure, `${path}/measure`, criterion) : [],
  )

/** Ends that go past those of the rating below. */
function beyondTheOneBelow(s: Subject, { bands }: AskedMeasure, path: Pointer): Mutation[] {
  return ([1, 2, 3] as const).flatMap((below) => {
    const { least, most } = bands[below]
    const band = `${path}/bands/${below + 1}`
    return [
      ...(least === undefined
        ? []
        : [set(s, `${band}/least`, least - 0.05), set(s, band, { most: Math.max(least, 0.1) })]),
      ...(most === undefined ? [] : [set(s, `${band}/most`, most + 0.05), set(s, band, { least: most })]),
    ]
  })
}

const fallingBands: Mutate = (s) =>
  eachMeasure(s, (measure, path) => [
    ...beyondTheOneBelow(s, measure, path),
    ...bandRatings.flatMap((rating) => [
      set(s, `${path}/bands/${rating}`, { least: 0.9, most: 0.8 }),
      set(s, `${path}/bands/${rating}/most`, measureFacts[measure.what].sizes[1] + 1),
      set(s, `${path}/bands/${rating}/least`, -5),
    ]),
    set(s, `${path}/bands`, { 1: measure.bands[4], 2: measure.bands[3], 3: measure.bands[2], 4: measure.bands[1] }),
  ])

/** Each instant at which the measure says nothing, phases that a skill of it lacks, and places without a board. */
const misplaced: Mutate = (s) =>
  eachMeasure(s, (measure, path, { key }) => {
    const { what } = measure
    const senseless = measureInstants.filter((at) => !measureFacts[what].instants.includes(at))
    const own = s.pairs.filter(({ pair }) => pair.criteria.some(({ criterion }) => criterion.key === key))
    const lacking = measureInstants.filter(
      (at) =>
        besidePhases.every((beside) => beside !== at) &&
        own.some(({ pair }) => phasesOf(pair.skill).every((phase) => phase !== at)),
    )
    const folded: AskedMeasure = { ...measure, what: 'hipAngle', unit: 'degrees' }
    return [
      ...senseless.map((at) => set(s, `${path}/at`, at)),
      ...lacking.map((at) => set(s, path, { ...folded, at })),
      ...(['clear-of-board', 'press-through'].includes(key)
        ? [set(s, path.replace(/measure$/, 'appliesTo/match/places'), ['1m', 'poolside'])]
        : []),
    ]
  })

/** Distances that an average may hide, or of which none is too near. */
const unguarded: Mutate = (s) => [
  ...eachOf(s, 'criteria', ({ critical }, path) => (critical ? [] : [set(s, `${path}/measure`, anAskedMeasure())])),
  ...eachMeasure(s, ({ what }, path) =>
    what === 'distanceFromTip'
      ? [
          set(s, path.replace(/measure$/, 'critical'), false),
          ...bandRatings.map((rating) => set(s, `${path}/bands/${rating}`, { most: 3 })),
        ]
      : [],
  ),
]

/** Changes to what may be measured, by the problem that has to be named. */
export const measureMutations = {
  'measure-bands': fallingBands,
  'measure-misplaced': misplaced,
  'distance-unguarded': unguarded,
} as const satisfies Partial<Record<LintCode, Mutate>>
