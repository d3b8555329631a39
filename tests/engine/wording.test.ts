import { describe, expect, it } from 'vitest'
import type { Block, Reason } from '@/lib/assessment/readiness/finding'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayReason } from '@/lib/assessment/readiness/say-reason'
import { sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import type { Shortage } from '@/lib/assessment/shortfall'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { age, criterion, examples, notEnough, october, shortfall, signOff, words } from '../support/reason-examples'

describe('every reason reads as a sentence a coach would say', () => {
  it.each(Object.values(examples))('$reason.code: $reads', ({ reason, node, reads }) => {
    expect(sayReason({ reason, node }, words)).toBe(reads)
  })

  it.each<[Partial<Shortage>, string]>([
    [{ successes: 1, coaches: 1 }, 'one clean attempt seen by a second coach.'],
    [{ coaches: 1 }, 'one clean attempt seen by a second coach.'],
    [
      { successes: 1, coaches: 1, days: 1, moments: 1 },
      'one clean attempt seen by a second coach, on another day and with a video moment.',
    ],
    [{ successes: 2, coaches: 2, days: 2 }, 'two clean attempts, seen by two coaches and on two days.'],
    [{ successes: 2, moments: 2 }, 'two clean attempts, each with a video moment.'],
    [{ successes: 1 }, 'one clean attempt.'],
    [{ unseen: ['hands-locked', 'safe-distance'] }, 'a rating of “hands locked” and “safe distance”.'],
    [
      { successes: 1, standing: [shortfall] },
      'one clean attempt and to mend “hands locked” rated 1 on 26 October where 3 is asked.',
    ],
    [{ certainty: 0.7 }, 'a longer run of clean attempts.'],
    [{}, 'what comes before it.'],
  ])('says a shortage %j', (shortage, wants) => {
    expect(sayReason({ reason: notEnough(shortage), node: signOff }, words)).toBe(
      `Forward dive, tuck at 1 m still wants ${wants}`,
    )
  })

  it('says how sure the run makes a clean rate, never rounded up to what is asked', () => {
    const edition = tinyEdition()
    const curriculum = indexEdition(
      { ...edition, standard: { ...edition.standard, certainty: { rate: 0.6, at: 0.9, over: 10 } } },
      'b'.repeat(64),
    )
    expect(sayReason({ reason: notEnough({ certainty: 0.8999 }), node: signOff }, { ...words, curriculum })).toBe(
      'Forward dive, tuck at 1 m still wants a steadier run (89 % sure of a clean rate of 60 %, where 90 % is asked).',
    )
  })

  it('says a shortfall and fallen evidence behind a doubt', () => {
    const doubt = (doubt: Extract<Reason, { code: 'in doubt' }>['doubt']) =>
      sayReason({ reason: { code: 'in doubt', doubt }, node: signOff }, words)
    expect(doubt({ kind: 'shortfall', shortfall })).toBe(
      'Forward dive, tuck at 1 m is in doubt: “hands locked” rated 1 on 26 October where 3 is asked.',
    )
    expect(doubt({ kind: 'evidence', attempt: 'a1' })).toBe(
      'Forward dive, tuck at 1 m is in doubt: an attempt that the sign-off rests on counts no longer.',
    )
  })
})

describe('blocks', () => {
  it.each<[Block, string]>([
    [{ kind: 'stand-down', closes: 'water', until: october }, 'Mira is stood down from the water until 26 October.'],
    [
      { kind: 'stand-down', closes: 'new', until: null },
      'Mira is stood down from anything new until a head coach ends it.',
    ],
    [
      { kind: 'stand-down', closes: 'water', until: null, knocks: ['i1'] },
      'Mira is stood down from the water until a head coach clears the knock to the head.',
    ],
    [
      { kind: 'pause', pair: '101C@1m', incident: 'i1', what: 'bad landing' },
      'Forward dive, tuck at 1 m is paused by a bad landing until a head coach clears it.',
    ],
    [
      { kind: 'lay-off', place: '3m', since: october, reentry: ['jump@3m'] },
      'Nothing was dived at 3 m since 26 October: first show forward jump, standing at 3 m again.',
    ],
    [
      { kind: 'returned', day: october, wantsMoreOf: ['101C@1m', 'jump@1m', 'line-up@3m'] },
      'Returned on 26 October: it comes back with a new clean attempt at forward dive, tuck at 1 m; forward jump, standing at 1 m and fall-in from standing at 3 m.',
    ],
  ])('%j', (block, reads) => {
    expect(sayBlock(block, words)).toBe(reads)
  })
})

describe('what is asked', () => {
  it('says every kind of leaf', () => {
    const asked = (requirement: Requirement) => sayRequirement(requirement, words).sentence
    expect(asked(signOff)).toBe('Forward dive, tuck at 1 m is signed at One or above.')
    expect(asked({ kind: 'signOff', skill: '103C', place: '3m' })).toBe(
      'Forward 1½ somersaults, tuck at 3 m is signed at Three or above.',
    )
    expect(asked(criterion)).toBe(
      '“Hands locked” in forward dive, tuck at 1 m reaches 3 in four of the last five called attempts within 60 days.',
    )
    expect(asked({ kind: 'level', level: 'two' })).toBe('Two is approved.')
    expect(asked({ kind: 'boardMove', family: 'forward', to: '3m' })).toBe(
      'The move to 3 m with forward dives is approved.',
    )
    expect(asked(age)).toBe('Age: at least 9 at the end of the year is asked.')
    expect(asked({ kind: 'venue', feature: 'board-3m' })).toBe('The club has a 3 m board.')
  })

  it('keeps the tree and the author’s reasons', () => {
    const tree = sayRequirement({ kind: 'atLeast', n: 1, of: [signOff, age], reason: 'either shows readiness' }, words)
    expect(tree).toMatchObject({ sentence: 'At least one of these is asked.', why: 'Either shows readiness.' })
    expect(tree.of.map((asked) => asked.sentence)).toHaveLength(2)
  })
})
