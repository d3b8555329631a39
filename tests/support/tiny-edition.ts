import type { Criterion, EditionDocument, Fault, Skill, SkillPlace, Standard } from '../../lib/curriculum/model'

/** The programme's standard in the small edition: 2 of 3 within 60 days, two coaches, two days. */
export const tinyStandard: Standard = {
  successes: 2,
  of: 3,
  coaches: 2,
  days: 2,
  withinDays: 60,
  moments: 0,
  slack: null,
  clean: 3,
  certainty: null,
  validForDays: 180,
  recheck: { successes: 1, of: 2 },
  recheckWithinDays: 90,
}

/** A (skill, place) with the plainest of everything. */
export const tinyPlace = (
  place: SkillPlace['place'],
  level: string,
  changes: Partial<SkillPlace> = {},
): SkillPlace => ({
  place,
  level,
  signer: 'coach',
  beforeMove: false,
  prerequisite: null,
  standard: {},
  ...changes,
})

/** A criterion whose anchors differ by more than their key. */
export const tinyCriterion = (key: string, changes: Partial<Criterion>): Criterion => ({
  key,
  phase: 'entry',
  title: key.replaceAll('-', ' '),
  statement: `The diver shows ${key.replaceAll('-', ' ')}.`,
  anchors: [
    'Nothing of it is there, or it is unsafe.',
    'Far off, whatever the coach says.',
    'It can be recognised, with one clear fault.',
    'Sound: a second look finds no fault.',
    'A model that others can be shown.',
  ],
  critical: false,
  appliesTo: { by: 'facets', match: {} },
  expects: [{ level: 'one', rating: 2 }],
  faults: [],
  ...changes,
})

const skills: readonly Skill[] = [
  {
    key: 'tread',
    title: 'Treads deep water',
    family: 'safety',
    dive: null,
    approach: null,
    phaseSet: 'drill',
    facets: {},
    summary: 'Treads water out of depth for one minute.',
    places: [tinyPlace('poolside', 'one', { standard: { coaches: 1, days: 1 } })],
  },
  {
    key: 'jump',
    title: 'Forward jump, standing',
    family: 'forward',
    dive: null,
    approach: 'standing',
    phaseSet: 'standing feet-first',
    facets: { direction: 'forward', facing: 'out', enters: 'feet-first' },
    summary: 'A jump from a still start, arms up, into a straight entry.',
    places: [
      tinyPlace('1m', 'one', {
        standard: { coaches: 1, days: 1 },
        prerequisite: { kind: 'signOff', skill: 'tread', place: 'poolside', atLevel: 'one' },
      }),
      tinyPlace('3m', 'two', {
        beforeMove: true,
        prerequisite: { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'one' },
      }),
    ],
  },
  {
    key: 'line-up',
    title: 'Fall-in from standing',
    family: 'forward',
    dive: null,
    approach: 'standing',
    phaseSet: 'fall-in',
    facets: { direction: 'forward', facing: 'out', sense: 'forwards', enters: 'head-first' },
    summary: 'Falls from standing into a straight head-first entry.',
    places: [
      tinyPlace('3m', 'two', {
        beforeMove: true,
        prerequisite: {
          kind: 'all',
          of: [
            { kind: 'signOff', skill: 'jump', place: '3m', atLevel: 'two' },
            { kind: 'signOff', skill: '101C', place: '1m', atLevel: 'one' },
          ],
        },
      }),
    ],
  },
  {
    key: '101C',
    title: 'Forward dive, tuck',
    family: 'forward',
    dive: '101C',
    approach: 'running',
    phaseSet: 'running',
    facets: {},
    summary: 'The running forward dive in tuck.',
    places: [
      tinyPlace('1m', 'one', { prerequisite: { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'one' } }),
      tinyPlace('3m', 'three', {
        signer: 'head',
        prerequisite: { kind: 'signOff', skill: '101C', place: '1m', atLevel: 'two' },
      }),
    ],
  },
  {
    key: '103C',
    title: 'Forward 1½ somersaults, tuck',
    family: 'forward',
    dive: '103C',
    approach: 'running',
    phaseSet: 'running',
    facets: {},
    summary: 'The running forward one and a half in tuck.',
    places: [
      tinyPlace('3m', 'three', {
        signer: 'head',
        prerequisite: { kind: 'signOff', skill: '101C', place: '3m', atLevel: 'three' },
      }),
    ],
  },
]

const criteria: readonly Criterion[] = [
  tinyCriterion('clear-water', {
    phase: 'set-up',
    critical: true,
    appliesTo: { by: 'facets', match: { families: ['safety'] } },
    expects: [{ level: 'one', rating: 3 }],
  }),
  tinyCriterion('hands-locked', {
    phase: 'entry',
    critical: true,
    appliesTo: { by: 'facets', match: { enters: ['head-first'] } },
    expects: [{ level: 'one', rating: 3 }],
    faults: ['hands-apart'],
  }),
  tinyCriterion('feet-together', {
    phase: 'entry',
    critical: true,
    appliesTo: { by: 'facets', match: { enters: ['feet-first'] } },
    expects: [{ level: 'one', rating: 3 }],
  }),
  tinyCriterion('safe-distance', {
    phase: 'flight',
    critical: true,
    appliesTo: { by: 'facets', match: { kinds: ['dive'] } },
    expects: [{ level: 'one', rating: 3 }],
  }),
  tinyCriterion('board-pushed', {
    phase: 'press',
    appliesTo: { by: 'facets', match: { families: ['forward'] } },
    expects: [
      { level: 'one', rating: 2 },
      { level: 'three', rating: 3 },
    ],
  }),
  tinyCriterion('upright', {
    phase: 'take-off',
    appliesTo: { by: 'facets', match: { directions: ['forward'] } },
    expects: [
      { level: 'one', rating: 2 },
      { level: 'two', rating: 3 },
    ],
  }),
]

const faults: readonly Fault[] = [
  {
    key: 'hands-apart',
    phase: 'entry',
    seen: 'Hands come apart at the water',
    causes: ['The grip is loose before the water.'],
    corrections: [{ kind: 'cue', text: 'Grab and lock.', drill: null }],
  },
]

/** A small valid edition for tests: three levels, five skills, six criteria, the board move forward 1 m → 3 m. */
export const tinyEdition = (overrides: Partial<EditionDocument> = {}): EditionDocument => ({
  schemaVersion: 1,
  programme: 'A small coast',
  title: 'Small edition',
  levels: [
    {
      key: 'one',
      title: 'One',
      summary: 'Safe in the water and off the low board.',
      requirement: { kind: 'signOff', skill: 'tread', place: 'poolside', atLevel: 'one' },
    },
    {
      key: 'two',
      title: 'Two',
      summary: 'A first dive.',
      requirement: {
        kind: 'atLeast',
        n: 2,
        of: [
          { kind: 'signOff', skill: '101C', place: '1m', atLevel: 'one' },
          { kind: 'signOff', skill: 'jump', place: '1m', atLevel: 'one' },
          { kind: 'signOff', skill: 'jump', place: '3m', atLevel: 'two' },
        ],
      },
    },
    {
      key: 'three',
      title: 'Three',
      summary: 'Dives from the high board.',
      requirement: {
        kind: 'all',
        of: [
          { kind: 'boardMove', family: 'forward', to: '3m' },
          { kind: 'signOff', skill: '101C', place: '3m', atLevel: 'three' },
        ],
      },
    },
  ],
  levelMap: {},
  standard: tinyStandard,
  skills,
  criteria,
  faults,
  boardMoves: [
    {
      key: 'forward-3m',
      title: 'Forward, 1 m to 3 m',
      family: 'forward',
      from: '1m',
      to: '3m',
      requirement: {
        kind: 'all',
        of: [
          { kind: 'signOff', skill: '101C', place: '1m', atLevel: 'two' },
          { kind: 'signOff', skill: 'line-up', place: '3m', atLevel: 'two' },
          { kind: 'age', min: 9, on: 'year-end' },
          { kind: 'venue', feature: 'board-3m' },
        ],
      },
    },
  ],
  layOff: [{ place: '3m', afterDays: 60, reentry: [{ skill: 'jump', place: '3m' }] }],
  ...overrides,
})
