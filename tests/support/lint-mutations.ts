import { phasesOf } from '@/lib/curriculum/edition/attach'
import { textOfCause } from '@/lib/curriculum/edition/fault-at'
import type { Event, EventPart } from '@/lib/curriculum/event/model'
import type { LintCode } from '@/lib/curriculum/lint/problem'
import type { Subject } from '@/lib/curriculum/lint/subject'
import { subjectOf } from '@/lib/curriculum/lint/subject'
import type { EditionDocument } from '@/lib/curriculum/model'
import { phases } from '@/lib/curriculum/model'
import { listOfKind } from '@/lib/curriculum/requirement/references'
import { alwaysBefore } from '@/lib/curriculum/tree/before'
import { withValue } from './edit-document'
import { measureMutations } from './measure-mutations'
import { drop, eachOf, type Mutate, type Mutation, set } from './mutation'
import { safetyMutations } from './safety-mutations'

const signOffs = (subject: Subject) =>
  subject.requirements.flatMap((written) =>
    listOfKind(written.requirement, 'signOff', written.path).map((placed) => ({ ...placed, written })),
  )
const leaves = <Kind extends 'criterion' | 'level' | 'boardMove' | 'age' | 'atLeast'>(subject: Subject, kind: Kind) =>
  subject.requirements.flatMap(({ requirement, path }) => listOfKind(requirement, kind, path))

const sound: Event = {
  key: 'trophy',
  title: 'Autumn trophy',
  season: 2026,
  ageBand: { from: 10, to: 12 },
  place: '1m',
  parts: [{ count: 2, distinctFamilies: 1, difficultyCap: null }],
}

const duplicateKeys: Mutate = (s) => [
  ...(['skills', 'criteria', 'faults', 'levels'] as const).flatMap((list) =>
    eachOf(s, list, (_, path, index) => (index === 0 ? [] : [set(s, `${path}/key`, s.document[list][index - 1]?.key)])),
  ),
  ...eachOf(s, 'skills', (skill, path) =>
    skill.places.slice(1).map((_, p) => set(s, `${path}/places/${p + 1}/place`, skill.places[p]?.place)),
  ),
  ...eachOf(s, 'criteria', (criterion, path) =>
    criterion.expects.slice(1).map((_, e) => set(s, `${path}/expects/${e + 1}/level`, criterion.expects[e]?.level)),
  ),
  ...s.document.boardMoves
    .slice(1)
    .map((_, m) => set(s, `/boardMoves/${m + 1}/family`, s.document.boardMoves[m]?.family)),
  set(s, '/layOff/1/place', s.document.layOff[0]?.place),
  set(s, '/events', [sound, sound]),
]

const unknownKeys: Mutate = (s) => [
  ...signOffs(s).flatMap(({ path }) => [
    set(s, `${path}/skill`, 'nobody'),
    set(s, `${path}/place`, '10m'),
    set(s, `${path}/atLevel`, 'nobody'),
  ]),
  ...leaves(s, 'criterion').flatMap(({ path }) => [
    set(s, `${path}/criterion`, 'nobody'),
    set(s, `${path}/at/0/skill`, 'nobody'),
    set(s, `${path}/at/0/place`, '10m'),
  ]),
  ...leaves(s, 'level').map(({ path }) => set(s, `${path}/level`, 'nobody')),
  ...leaves(s, 'boardMove').map(({ path }) => set(s, `${path}/to`, '10m')),
  ...s.pairs.map(({ path }) => set(s, `${path}/level`, 'nobody')),
  ...eachOf(s, 'criteria', (criterion, path) => [
    ...criterion.expects.map((_, e) => set(s, `${path}/expects/${e}/level`, 'nobody')),
    ...criterion.faults.map((_, f) => set(s, `${path}/faults/${f}`, 'nobody')),
    ...(criterion.appliesTo.by === 'skills' ? [set(s, `${path}/appliesTo/skills/0`, 'nobody')] : []),
  ]),
  ...s.document.layOff.flatMap((rule, r) =>
    rule.reentry.map((_, e) => set(s, `/layOff/${r}/reentry/${e}/skill`, 'nobody')),
  ),
  set(s, '/levelMap', { old: 'nobody' }),
  set(s, '/boardMoves/0/requirement', { kind: 'diveList', event: 'nobody' }),
]

const missingDrills: Mutate = (s) =>
  eachOf(s, 'faults', (fault, path) =>
    fault.corrections.flatMap(({ drill }, c) =>
      drill === null
        ? []
        : [
            set(s, `${path}/corrections/${c}/drill/skill`, 'nobody'),
            set(s, `${path}/corrections/${c}/drill/place`, '10m'),
          ],
    ),
  )

const cycles: Mutate = (s) => {
  const before = alwaysBefore(s.curriculum)
  const top = s.document.levels.at(-1)?.key
  return [
    ...s.pairs.flatMap(({ pair }) =>
      s.pairs
        .filter((earlier) => before(pair.key).has(earlier.pair.key))
        .map(({ path }) => set(s, `${path}/prerequisite`, { kind: 'signOff', ...pair.holding, atLevel: top })),
    ),
    ...s.pairs.map(({ pair, path }) =>
      set(s, `${path}/prerequisite`, { kind: 'signOff', ...pair.holding, atLevel: top }),
    ),
    ...eachOf(s, 'levels', (level, path) => [set(s, `${path}/requirement`, { kind: 'level', level: level.key })]),
    set(s, '/boardMoves/0/requirement', { kind: 'level', level: top }),
    set(s, '/boardMoves/0/requirement', { kind: 'signOff', skill: '101C', place: '3m', atLevel: top }),
  ]
}

const unreachable: Mutate = (s) => {
  const before = alwaysBefore(s.curriculum)
  const neededByOthers = (skill: string): boolean =>
    s.pairs.some(
      ({ pair }) =>
        pair.skill.key !== skill && [...before(pair.key)].some((earlier) => earlier.startsWith(`${skill}@`)),
    )
  return [
    ...s.pairs.map(({ path }) => set(s, `${path}/prerequisite`, { kind: 'age', min: 20, max: 10, on: 'the date' })),
    ...eachOf(s, 'skills', (skill, path) => (neededByOthers(skill.key) ? [drop(s, path)] : [])),
  ]
}

const cannotBeMet: Mutate = (s) => [
  ...leaves(s, 'criterion').flatMap(({ node, path }) => [
    set(s, `${path}/times`, node.of + 1),
    set(s, `${path}/criterion`, 'treads-calmly'),
  ]),
  ...leaves(s, 'atLeast').map(({ node, path }) => set(s, `${path}/n`, node.of.length + 1)),
  ...leaves(s, 'age').map(({ node, path }) => set(s, `${path}/max`, (node.min ?? 2) - 1)),
  ...['/standard', ...s.pairs.map(({ path }) => `${path}/standard`)].flatMap((path) => [
    set(s, `${path}/successes`, 9),
    set(s, `${path}/days`, 400),
    set(s, `${path}/recheck`, { successes: 3, of: 2 }),
  ]),
]

const unnamedLevels: Mutate = (s) =>
  signOffs(s)
    .filter(({ written }) => written.of !== 'level')
    .map(({ path }) => drop(s, `${path}/atLevel`))

const mismatchedLevels: Mutate = (s) => {
  const [first, last] = [s.document.levels[0], s.document.levels.at(-1)]
  return signOffs(s).flatMap(({ node, path, written }) => {
    const taught = s.curriculum.pairs.get(`${node.skill}@${node.place}`)?.level ?? 0
    return [
      ...(written.level !== null && written.level < s.document.levels.length - 1
        ? [set(s, `${path}/atLevel`, last?.key)]
        : []),
      ...(taught > 0 ? [set(s, `${path}/atLevel`, first?.key)] : []),
    ]
  })
}

const misplacedMoves: Mutate = (s) =>
  s.document.boardMoves.flatMap((_, m) => [
    ...['1m', 'poolside', 'dry-board'].map((place) => set(s, `/boardMoves/${m}/to`, place)),
    ...['3m', '10m', 'floor'].map((place) => set(s, `/boardMoves/${m}/from`, place)),
    ...['twisting', 'armstand'].map((family) => set(s, `/boardMoves/${m}/family`, family)),
  ])

/** A phase that none of the skills has which a criterion is about. */
const foreignPhase = (s: Subject, key: string) => {
  const own = s.pairs.filter(({ pair }) => pair.criteria.some(({ criterion }) => criterion.key === key))
  const applies = new Set(own.flatMap(({ pair }) => phasesOf(pair.skill)))
  return phases.find((phase) => !applies.has(phase))
}

const unattached: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) => [
    set(s, `${path}/phase`, foreignPhase(s, criterion.key)),
    criterion.appliesTo.by === 'facets'
      ? set(s, `${path}/appliesTo/match/families`, ['armstand'])
      : set(s, `${path}/appliesTo/places`, ['10m']),
  ])

// No skill of the demo is taught there.
const nowhere = { places: ['10m'] }

const unreadWords: Mutate = (s) =>
  eachOf(s, 'faults', (fault, path) => [
    ...fault.causes.map((cause, c) => set(s, `${path}/causes/${c}`, { text: textOfCause(cause), match: nowhere })),
    ...fault.corrections.map((_, c) => set(s, `${path}/corrections/${c}/match`, nowhere)),
  ])

const unexplainedFaults: Mutate = (s) =>
  eachOf(s, 'faults', (fault, path) => {
    const places = s.pairs
      .filter(({ pair }) => pair.criteria.some(({ criterion }) => criterion.faults.includes(fault.key)))
      .map(({ pair }) => pair.at.place)
    const match = { places: places.slice(0, 1) }
    if (new Set(places).size < 2) return []
    return [
      set(s, `${path}/causes`, [{ text: 'Why.', match }]),
      set(s, `${path}/corrections`, [{ kind: 'cue', text: 'Now.', drill: null, match }]),
    ]
  })

const drillsAhead: Mutate = (s) => {
  const before = alwaysBefore(s.curriculum)
  return eachOf(s, 'faults', (fault, path) => {
    const early = s.pairs.filter(({ pair }) =>
      pair.criteria.some(({ criterion }) => criterion.faults.includes(fault.key)),
    )
    const later = s.pairs.filter(({ pair }) => early.some((one) => before(pair.key).has(one.pair.key)))
    return later
      .slice(0, 3)
      .map(({ pair }) =>
        set(s, `${path}/corrections`, [...fault.corrections, { kind: 'drill', text: 'On.', drill: pair.holding }]),
      )
  })
}

const unusedFaults: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) =>
    criterion.faults.flatMap((fault, f) =>
      s.document.criteria.filter((other) => other.faults.includes(fault)).length === 1
        ? [drop(s, `${path}/faults/${f}`)]
        : [],
    ),
  )

const alikeAnchors: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path, index) => {
    const [rating, other] = [index % 5, (index + 2) % 5]
    const anchor = criterion.anchors[rating]
    return [set(s, `${path}/anchors/${other}`, anchor), set(s, `${path}/anchors/${other}`, `Not quite: ${anchor}`)]
  })

const lowCritical: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) =>
    criterion.critical
      ? [set(s, `${path}/expects/0/rating`, 2), set(s, `${path}/expects/0/level`, s.document.levels[1]?.key)]
      : [],
  )

const fallingExpectations: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) =>
    criterion.expects
      .slice(1)
      .flatMap((step, e) => [
        set(s, `${path}/expects/${e}/rating`, step.rating + 1),
        set(s, `${path}/expects/${e + 1}/rating`, 0),
      ]),
  )

const withoutCritical: Mutate = (s) =>
  s.pairs.map(({ pair, name }) => {
    const attached = new Set(pair.criteria.map(({ criterion }) => criterion.key))
    const criteria = s.document.criteria.map((criterion) =>
      attached.has(criterion.key) ? { ...criterion, critical: false } : criterion,
    )
    return { what: `no critical criterion for ${name}`, make: () => withValue(s.document, '/criteria', criteria) }
  })

const manyCritical: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) => {
    const full = s.pairs.some(
      ({ pair }) =>
        pair.criteria.filter((attached) => attached.criterion.critical).length === 3 &&
        pair.criteria.some((attached) => attached.criterion.key === criterion.key),
    )
    return full && !criterion.critical ? [set(s, `${path}/critical`, true)] : []
  })

const manyCriteria: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) => {
    const wouldOverflow = s.pairs.some(
      ({ pair }) =>
        pair.criteria.length === 12 &&
        phasesOf(pair.skill).includes(criterion.phase) &&
        pair.criteria.every((attached) => attached.criterion.key !== criterion.key),
    )
    return wouldOverflow && criterion.appliesTo.by === 'facets' ? [set(s, `${path}/appliesTo/match`, {})] : []
  })

const uncertain: Mutate = (s) =>
  ['/standard', ...s.pairs.map(({ path }) => `${path}/standard`)].flatMap((path) => [
    set(s, `${path}/certainty`, { rate: 0.9, at: 0.9, over: 5 }),
    set(s, `${path}/certainty`, { rate: 0.5, at: 0.95, over: 3 }),
  ])

const hardRechecks: Mutate = (s) =>
  ['/standard', ...s.pairs.map(({ path }) => `${path}/standard`)].flatMap((path) => [
    set(s, `${path}/recheck`, { successes: 3, of: 3 }),
    set(s, `${path}/recheck`, { successes: 9, of: 20 }),
  ])

const withoutList: Mutate = (s) => {
  const events = s.document.events ?? []
  const added = events.length
  const wrong = (change: Partial<Event>) => set(s, '/events', [...events, { ...sound, ...change }])
  const onePart = (change: Partial<EventPart>) =>
    wrong({ parts: [{ count: 2, distinctFamilies: 1, difficultyCap: null, ...change }] })
  return [
    wrong({ ageBand: { from: 13, to: 12 } }),
    onePart({ difficultyCap: 20 }),
    onePart({ difficultyCap: 1 }),
    onePart({ distinctFamilies: 3 }),
    onePart({ count: 12, distinctFamilies: 6 }),
    wrong({ parts: Array.from({ length: 3 }, () => ({ count: 12, distinctFamilies: 1, difficultyCap: null })) }),
    ...Array.from({ length: added }, (_, event) => set(s, `/events/${event}/parts/0/difficultyCap`, 3)),
    ...Array.from({ length: added }, (_, event) => set(s, `/events/${event}/parts/0/distinctFamilies`, 6)),
  ]
}

const impossibleDives: Mutate = (s) =>
  eachOf(s, 'skills', (skill, path) =>
    skill.dive === null ? [] : ['107A', '405A', '600A'].map((number) => set(s, `${path}/dive`, number)),
  )

const misdescribedDives: Mutate = (s) =>
  eachOf(s, 'skills', (skill, path) =>
    skill.dive === null
      ? []
      : [
          set(s, `${path}/family`, skill.family === 'inward' ? 'reverse' : 'inward'),
          set(s, `${path}/phaseSet`, 'fall-in'),
          set(s, `${path}/approach`, skill.approach === 'running' ? 'standing' : 'running'),
          set(s, `${path}/approach`, null),
          set(s, `${path}/dive`, skill.family === 'back' ? '101B' : '201B'),
        ],
  )

const mutations: Readonly<Record<LintCode, Mutate>> = {
  ...safetyMutations,
  ...measureMutations,
  'duplicate-key': duplicateKeys,
  'unknown-key': unknownKeys,
  'drill-missing': missingDrills,
  cycle: cycles,
  unreachable,
  'cannot-be-met': cannotBeMet,
  'no-level-named': unnamedLevels,
  'level-mismatch': mismatchedLevels,
  'move-misplaced': misplacedMoves,
  'criterion-without-skill': unattached,
  'fault-unused': unusedFaults,
  'fault-words-unread': unreadWords,
  'fault-unexplained': unexplainedFaults,
  'drill-ahead': drillsAhead,
  'anchors-alike': alikeAnchors,
  'critical-below-3': lowCritical,
  'expectation-falls': fallingExpectations,
  'no-critical-criterion': withoutCritical,
  'too-many-critical': manyCritical,
  'too-many-criteria': manyCriteria,
  'certainty-out-of-reach': uncertain,
  'recheck-too-hard': hardRechecks,
  'no-legal-list': withoutList,
  'dive-impossible-here': impossibleDives,
  'dive-misdescribed': misdescribedDives,
}

/** Every mutation of a sound document after which a problem with this code must be named. */
export const listMutations = (document: EditionDocument, code: LintCode): Mutation[] =>
  mutations[code](subjectOf(document))
