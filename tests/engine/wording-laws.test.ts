import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '@/lib/assessment/readiness/explain'
import { type Finding, type Reason, statuses } from '@/lib/assessment/readiness/finding'
import { sayReason } from '@/lib/assessment/readiness/say-reason'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { statusWord } from '@/lib/assessment/readiness/wording'
import { parseDay } from '@/lib/assessment/time'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { examples, move, words } from '../support/reason-examples'

describe('whatever the finding', () => {
  const day = fc.integer({ min: parseDay('2020-01-01'), max: parseDay('2030-12-31') })
  const small = fc.integer({ min: 0, max: 14 })
  const pair = fc.constantFrom<PairKey>('101C@1m', 'jump@3m', 'tread@poolside', 'gone@dry-board-belt')
  const key = fc.constantFrom('hands-locked', 'upright', 'gone')
  const level = fc.constantFrom('one', 'two', 'three', 'gone')
  const rating = fc.constantFrom(0, 1, 2, 3, 4) as fc.Arbitrary<0 | 1 | 2 | 3 | 4>
  const anyShortfall = fc.record({ criterion: key, rating, expected: rating, attempt: fc.uuid(), day })
  const anyShortage = fc.record({
    successes: small,
    coaches: small,
    days: small,
    moments: small,
    certainty: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    standing: fc.array(anyShortfall, { maxLength: 3 }),
    unseen: fc.array(key, { maxLength: 3 }),
  })
  const doubt = fc.oneof(
    fc.record({ kind: fc.constant('shortfall' as const), shortfall: anyShortfall }),
    fc.record({ kind: fc.constant('evidence' as const), attempt: fc.uuid() }),
    fc.record({ kind: fc.constant('below' as const), pair }),
    fc.record({ kind: fc.constant('withdrawn below' as const), target: fc.constant('move:forward:3m' as const) }),
  )
  const dives = fc.array(fc.record({ pair, part: fc.nat(1), tenths: small, evidence: fc.constant([]) }), {
    minLength: 1,
  })
  const whyNot = fc.oneof(
    fc.record({ kind: fc.constant('too few dives' as const), held: small, wanted: small }),
    fc.record({ kind: fc.constant('too few families' as const), part: fc.nat(1), held: small, wanted: small }),
    fc.record({ kind: fc.constant('over the cap' as const), part: fc.nat(1), least: small, cap: small }),
    fc.constantFrom(
      { kind: 'families shared' as const },
      { kind: 'caps shared' as const },
      { kind: 'no birth date' as const },
    ),
    fc.record({ kind: fc.constant('outside the band' as const), age: small }),
  )
  const answers = fc.record({
    now: fc.record({ legal: fc.constant('now' as const), list: dives }),
    'once renewed': fc.record({
      legal: fc.constant('once renewed' as const),
      list: dives,
      renew: fc.array(pair, { minLength: 1, maxLength: 3 }),
    }),
    no: fc.record({
      legal: fc.constant('no' as const),
      because: fc.array(whyNot, { minLength: 1, maxLength: 3 }),
      lapsed: fc.array(pair, { maxLength: 2 }),
    }),
  })
  // Any field that any code has, so that each code finds its own.
  const fields = fc.record({
    counts: fc.record({
      met: small,
      wanted: small,
      outOf: small,
      failed: small,
      of: small,
      reached: small,
      times: small,
      fell: small,
      age: small,
      min: small,
      max: small,
    }),
    days: fc.record({ day, validUntil: fc.option(day), renewBy: day, lapses: day, from: day }),
    answers,
    flags: fc.record({ byOverride: fc.boolean(), recognised: fc.boolean() }),
    keys: fc.record({
      level,
      criterion: key,
      rating,
      shortfall: anyShortfall,
      shortage: anyShortage,
      signedAt: fc.option(level),
      doubt,
      target: fc.constantFrom('level:one', 'level:gone', 'move:forward:3m', 'move:inward:10m'),
      feature: fc.constant('board-3m'),
      what: key,
      event: fc.constantFrom('trophy', 'gone'),
    }),
  })
  const reason = fc
    .tuple(fc.constantFrom(...Object.values(examples)), fields)
    .map(([{ reason }, { counts, days, flags, keys, answers }]): Reason => {
      const answer = 'answer' in reason ? answers[reason.answer.legal] : undefined
      const all: Record<string, unknown> = { ...counts, ...days, ...flags, ...keys, answer }
      const own = Object.keys(reason).filter((name) => name !== 'code')
      return { ...reason, ...Object.fromEntries(own.map((name) => [name, all[name]])) } as Reason
    })
  const node = fc.constantFrom<Requirement>(
    ...Object.values(examples).map((example) => example.node),
    { kind: 'signOff', skill: 'gone', place: 'trampoline-belt' },
    { kind: 'age', max: 12, on: 'the date' },
    { kind: 'age', on: 'the date' },
  )
  const wellFormed = (text: string) => {
    expect(text).toMatch(/^(?:“?[\p{Lu}\d]|“gone)/u)
    expect(text).toMatch(/[^.]\.$/)
    expect(text).not.toMatch(/undefined|null|NaN|\[object| {2}| [,.;:]|\b(?:she|he|her|his|him|they)\b/)
    expect(text).not.toMatch(/\b(?:one|1) (?:clean attempts|days|coaches|conditions)\b/)
    expect(text).not.toMatch(/\ba [aeio]|\ban [^aeiou8]/)
  }

  it('is said in one well-formed sentence', () => {
    fc.assert(
      fc.property(reason, node, (reason, node) => wellFormed(sayReason({ reason, node }, words))),
      { seed: 20261120, numRuns: 3000 },
    )
  })

  it('explains and headlines any tree in well-formed sentences', () => {
    const { finding } = fc.letrec<{ finding: Finding }>((tie) => ({
      finding: fc
        .record({
          node,
          status: fc.constantFrom(...statuses),
          reason,
          evidence: fc.array(fc.uuid(), { maxLength: 2 }),
          children: fc.oneof({ maxDepth: 3 }, fc.constant([]), fc.array(tie('finding'), { maxLength: 4 })),
          picks: fc.array(fc.nat(3), { maxLength: 4 }),
        })
        .map(({ picks, ...rest }): Finding => {
          const binding = [...new Set(picks)].filter((index) => index < rest.children.length)
          const branch = { code: 'branch', met: 1, wanted: 2, outOf: 3 } as const
          return { ...rest, binding, reason: binding.length > 0 ? branch : rest.reason }
        }),
    }))
    const check = (node: ReturnType<typeof explain>): void => {
      wellFormed(node.sentence)
      node.children.forEach(check)
      expect(node.children.length).not.toBe(1)
    }
    fc.assert(
      fc.property(finding, fc.boolean(), small, small, (finding, ready, attempts, decisions) => {
        check(explain(finding, words))
        const said = sayTarget({ target: move, finding, blocks: [], held: 'no', ready }, words, {
          kind: 'count',
          attempts,
          decisions,
          newSkills: [],
          byPair: {},
          notBefore: null,
          exact: true,
        })
        for (const line of [said.headline, ...said.lines]) wellFormed(line)
      }),
      { seed: 20261120, numRuns: 500 },
    )
  })

  it('has a word for each status', () => {
    expect(Object.keys(statusWord).sort()).toEqual([...statuses].sort())
    expect(new Set(Object.values(statusWord)).size).toBe(statuses.length)
  })
})
