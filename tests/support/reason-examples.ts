import type { Reason } from '@/lib/assessment/readiness/finding'
import type { Words } from '@/lib/assessment/readiness/wording'
import type { Shortage, StandingShortfall } from '@/lib/assessment/shortfall'
import { parseDay } from '@/lib/assessment/time'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { anEvent, aPart } from './dive-events'

export const words: Words = {
  curriculum: indexEdition(
    tinyEdition({ events: [anEvent('3m', [aPart(2, 1, 30)], { ageBand: { from: 12, to: 13 } })] }),
    'a'.repeat(64),
  ),
  today: parseDay('2026-11-20'),
  diver: 'Mira',
}
export const october = parseDay('2026-10-26')
export const signOff: Requirement = { kind: 'signOff', skill: '101C', place: '1m', atLevel: 'one' }
export const criterion: Requirement = {
  kind: 'criterion',
  criterion: 'hands-locked',
  at: [{ skill: '101C', place: '1m' }],
  rating: 3,
  times: 4,
  of: 5,
  withinDays: 60,
}
export const age: Requirement = { kind: 'age', min: 9, on: 'year-end' }
export const shortfall: StandingShortfall = {
  criterion: 'hands-locked',
  rating: 1,
  expected: 3,
  attempt: 'a1',
  day: october,
}
export const nothing: Shortage = {
  successes: 0,
  coaches: 0,
  days: 0,
  moments: 0,
  certainty: null,
  standing: [],
  unseen: [],
}
export const notEnough = (shortage: Partial<Shortage>): Reason => ({
  code: 'not enough',
  level: 'one',
  shortage: { ...nothing, ...shortage },
  signedAt: null,
})

export interface Example<C extends Reason['code']> {
  readonly reason: Extract<Reason, { code: C }>
  readonly node: Requirement
  readonly reads: string
}
export const list: Requirement = { kind: 'diveList', event: 'trophy' }
export const move = 'move:forward:3m' as const

/** One for each code: a code without an example does not compile. */
export const examples: { readonly [C in Reason['code']]: Example<C> } = {
  branch: {
    reason: { code: 'branch', met: 1, wanted: 3, outOf: 3 },
    node: { kind: 'all', of: [] },
    reads: 'One of three conditions is met; all are asked.',
  },
  signed: {
    reason: {
      code: 'signed',
      level: 'one',
      day: october,
      validUntil: parseDay('2027-04-24'),
      byOverride: false,
      recognised: false,
    },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m is signed at One since 26 October, valid until 24 April 2027.',
  },
  lapsed: {
    reason: { code: 'lapsed', day: october, renewBy: parseDay('2026-12-01') },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m lapsed on 26 October; a recheck renews it until 1 December.',
  },
  'in doubt': {
    reason: { code: 'in doubt', doubt: { kind: 'below', pair: 'jump@1m' } },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m is in doubt: it rests on forward jump, standing at 1 m, which is not current.',
  },
  'recognised, not shown': {
    reason: { code: 'recognised, not shown', day: october, lapses: parseDay('2027-02-23') },
    node: signOff,
    reads:
      'Forward dive, tuck at 1 m is recognised since 26 October and not shown here yet; the recognition lapses on 23 February 2027.',
  },
  'to sign': {
    reason: { code: 'to sign', level: 'one' },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m has reached the standard of One and waits to be signed.',
  },
  'waits for what it rests on': {
    reason: { code: 'waits for what it rests on', level: 'one' },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m has reached the standard of One and waits for what it rests on.',
  },
  'not enough': {
    reason: {
      code: 'not enough',
      level: 'two',
      shortage: { ...nothing, successes: 1, coaches: 1 },
      signedAt: 'one',
    },
    node: signOff,
    reads:
      'Forward dive, tuck at 1 m is signed at One and still wants one clean attempt seen by a second coach at Two.',
  },
  failing: {
    reason: { code: 'failing', level: 'two', failed: 2, of: 3 },
    node: signOff,
    reads: 'Forward dive, tuck at 1 m is not there yet: two of the last three called attempts fell short of Two.',
  },
  'standing shortfall': {
    reason: { code: 'standing shortfall', level: 'one', shortfall },
    node: signOff,
    reads:
      'Forward dive, tuck at 1 m is held back by “hands locked” rated 1 on 26 October where 3 is asked; the last three attempts that rate it must reach 3.',
  },
  rated: {
    reason: { code: 'rated', criterion: 'hands-locked', reached: 4, times: 4, of: 5 },
    node: criterion,
    reads: '“Hands locked” in forward dive, tuck at 1 m reached 3 in four of the last five called attempts.',
  },
  'rated too seldom': {
    reason: { code: 'rated too seldom', criterion: 'hands-locked', reached: 1, times: 4, of: 5 },
    node: criterion,
    reads:
      '“Hands locked” in forward dive, tuck at 1 m has reached 3 in one called attempt; four of the last five are asked.',
  },
  'fell short': {
    reason: { code: 'fell short', criterion: 'hands-locked', fell: 2, of: 5, rating: 3 },
    node: criterion,
    reads: '“Hands locked” in forward dive, tuck at 1 m fell short of 3 in two of the last five called attempts.',
  },
  'criterion shortfall': {
    reason: { code: 'criterion shortfall', criterion: 'hands-locked', shortfall },
    node: criterion,
    reads: '“Hands locked” in forward dive, tuck at 1 m is not sound yet: rated 1 on 26 October where 3 is asked.',
  },
  approved: {
    reason: { code: 'approved', target: move, day: october, byOverride: true, recognised: false },
    node: { kind: 'boardMove', family: 'forward', to: '3m' },
    reads: 'The move to 3 m with forward dives was approved by override on 26 October.',
  },
  'to review': {
    reason: { code: 'to review', target: 'level:two', day: october },
    node: { kind: 'level', level: 'two' },
    reads: 'Two, approved on 26 October, is to be reviewed: what it rests on no longer holds.',
  },
  'not approved': {
    reason: { code: 'not approved', target: move },
    node: { kind: 'boardMove', family: 'forward', to: '3m' },
    reads: 'The move to 3 m with forward dives is not approved yet.',
  },
  'recognised, not shown here': {
    reason: { code: 'recognised, not shown here', target: 'level:one' },
    node: { kind: 'level', level: 'one' },
    reads: 'One is recognised, and what it rests on is not shown here yet.',
  },
  withdrawn: {
    reason: { code: 'withdrawn', target: move, day: parseDay('2025-10-26') },
    node: { kind: 'boardMove', family: 'forward', to: '3m' },
    reads: 'The move to 3 m with forward dives was withdrawn on 26 October 2025.',
  },
  'of age': {
    reason: { code: 'of age', age: 11 },
    node: age,
    reads: 'Age 11 is inside the limits: at least 9 at the end of the year is asked.',
  },
  'age waived': {
    reason: { code: 'age waived', age: 8 },
    node: age,
    reads: 'At least 9 at the end of the year is asked; at age 8 it is waived by override.',
  },
  'no birth date': {
    reason: { code: 'no birth date' },
    node: { kind: 'age', min: 9, max: 12, on: 'the date' },
    reads: 'No birth date is recorded: from 9 to 12 is asked.',
  },
  'too young': {
    reason: { code: 'too young', age: 8, min: 9, from: parseDay('2027-01-01') },
    node: age,
    reads: 'Age 8 is too young: at least 9 is asked, which comes on 1 January 2027.',
  },
  'too old': {
    reason: { code: 'too old', age: 15, max: 14 },
    node: { kind: 'age', max: 14, on: 'the date' },
    reads: 'Age 15 is too old: at most 14 is asked.',
  },
  'legal list': {
    reason: {
      code: 'legal list',
      event: 'trophy',
      answer: {
        legal: 'now',
        list: [
          { pair: '101C@3m', part: 0, tenths: 14, evidence: [] },
          { pair: '103C@3m', part: 0, tenths: 15, evidence: [] },
        ],
      },
    },
    node: list,
    reads: 'A list for Autumn trophy is legal: 101C and 103C (2.9 of at most 3.0).',
  },
  'list to renew': {
    reason: {
      code: 'list to renew',
      event: 'trophy',
      answer: {
        legal: 'once renewed',
        list: [
          { pair: '101C@3m', part: 0, tenths: 14, evidence: [] },
          { pair: '103C@3m', part: 0, tenths: 15, evidence: [] },
        ],
        renew: ['101C@3m'],
      },
    },
    node: list,
    reads:
      'A list for Autumn trophy is legal once forward dive, tuck at 3 m is current again: 101C and 103C (2.9 of at most 3.0).',
  },
  'no legal list': {
    reason: {
      code: 'no legal list',
      event: 'trophy',
      answer: {
        legal: 'no',
        because: [
          { kind: 'outside the band', age: 14 },
          { kind: 'too few dives', held: 1, wanted: 2 },
        ],
        lapsed: ['101C@3m'],
      },
    },
    node: list,
    reads:
      'No list for Autumn trophy is legal yet: age 14 on 31 December 2026 is outside the band: from 12 to 13 is asked; one of the two dives asked is held at 3 m; forward dive, tuck at 3 m is to be renewed.',
  },
  'venue has it': {
    reason: { code: 'venue has it', feature: 'board-3m' },
    node: { kind: 'venue', feature: 'board-3m' },
    reads: 'The club has a 3 m board.',
  },
  'venue unknown': {
    reason: { code: 'venue unknown', feature: 'board-3m' },
    node: { kind: 'venue', feature: 'board-3m' },
    reads: 'It is not recorded whether the club has a 3 m board.',
  },
  'venue lacks it': {
    reason: { code: 'venue lacks it', feature: 'board-3m' },
    node: { kind: 'venue', feature: 'board-3m' },
    reads: 'The club does not have a 3 m board.',
  },
  'not in this edition': {
    reason: { code: 'not in this edition', what: '999Z@1m' },
    node: signOff,
    reads: '“999Z@1m” is not in this edition of the curriculum, so nobody can meet it.',
  },
}
