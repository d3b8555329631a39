import { describe, expect, it } from 'vitest'
import { explain, sayBinding } from '@/lib/assessment/readiness/explain'
import type { Finding, Reason, Remaining, Status, TargetFinding } from '@/lib/assessment/readiness/finding'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { parseDay } from '@/lib/assessment/time'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { examples, move, words } from '../support/reason-examples'

const leaf = (status: Status, reads: { readonly node: Requirement; readonly reason: Reason }): Finding => ({
  node: reads.node,
  status,
  reason: reads.reason,
  evidence: [],
  children: [],
  binding: [],
})
const branch = (node: Requirement, status: Status, children: Finding[], binding: number[]): Finding => ({
  node,
  status,
  reason: {
    code: 'branch',
    met: children.filter((child) => child.status === 'met').length,
    wanted: children.length,
    outOf: children.length,
  },
  evidence: ['a1'],
  children,
  binding,
})
const metLeaf = leaf('met', examples.signed)
const missing = leaf('unproven', {
  ...examples['not enough'],
  reason: { ...examples['not enough'].reason, signedAt: null },
})

describe('an explanation', () => {
  it('gives a branch with a single binding child away to it and counts the rest', () => {
    const all: Requirement = { kind: 'all', of: [], reason: 'the board is earned' }
    const nested = branch({ kind: 'any', of: [] }, 'unproven', [missing], [0])
    const explained = explain(branch(all, 'unproven', [metLeaf, nested, metLeaf, metLeaf], [1]), words)
    expect(explained).toMatchObject({
      status: 'unproven',
      sentence: 'Forward dive, tuck at 1 m still wants one clean attempt seen by a second coach.',
      why: 'the board is earned',
      metLine: '3 more are met',
      children: [],
    })
  })

  it('follows several binding children, each with its own', () => {
    const explained = explain(
      branch({ kind: 'all', of: [] }, 'unmet', [missing, metLeaf, leaf('unmet', examples.failing)], [0, 2]),
      words,
    )
    expect(explained.sentence).toBe('One of three conditions is met; all are asked.')
    expect(explained.metLine).toBe('1 more is met')
    expect(explained.children.map((child) => child.status)).toEqual(['unproven', 'unmet'])
    expect(explained.evidence).toEqual(['a1'])
    expect(explained.choice).toBe(false)
  })

  it('says where there is a choice', () => {
    const choice = branch({ kind: 'any', of: [] }, 'unproven', [missing, missing], [0, 1])
    const asked = { code: 'branch', met: 0, wanted: 1, outOf: 2 } as const
    expect(explain({ ...choice, reason: asked }, words).choice).toBe(true)
  })

  it('reads a level inside it out, or only names it where it stands beside', () => {
    const level = { ...leaf('lapsed', examples['to review']), children: [missing, missing], binding: [0, 1] }
    const finding = branch({ kind: 'all', of: [] }, 'unproven', [level, missing], [0, 1])
    expect(explain(finding, words).children[0]?.children).toHaveLength(2)
    const named = explain(finding, words, 'named')
    expect(named.children.map(({ children }) => children)).toEqual([[], []])
    expect(named.children[0]?.sentence).toBe(explain(level, words).sentence)
  })
})

describe('what binds, as running text', () => {
  it('says the leaves that bind and none that is met', () => {
    const nested = branch({ kind: 'any', of: [] }, 'unproven', [missing], [0])
    const said = sayBinding(branch({ kind: 'all', of: [] }, 'unproven', [metLeaf, nested], [1]), words)
    expect(said).toBe(explain(missing, words).sentence)
  })
  it('says two of many and counts the rest', () => {
    const all = branch({ kind: 'all', of: [] }, 'unproven', [missing, missing, missing, missing], [0, 1, 2, 3])
    const one = explain(missing, words).sentence
    expect(sayBinding(all, words)).toBe(`${one} ${one} And two more.`)
  })
})

const count = (changes: Partial<Extract<Remaining, { kind: 'count' }>>): Remaining => ({
  kind: 'count',
  attempts: 0,
  decisions: 0,
  newSkills: [],
  byPair: {},
  notBefore: null,
  exact: true,
  ...changes,
})
const target = (changes: Partial<TargetFinding>): TargetFinding => ({
  target: move,
  finding: missing,
  blocks: [],
  held: 'no',
  ready: false,
  ...changes,
})

describe('a target’s headline', () => {
  it.each<[Partial<TargetFinding>, Remaining | null, string]>([
    [{ ready: true }, null, 'Mira is ready for 3 m with forward dives.'],
    [{}, count({ attempts: 2 }), 'Mira is two clean attempts away from 3 m with forward dives.'],
    [
      {},
      count({ attempts: 1, decisions: 1, newSkills: ['line-up@3m'] }),
      'Mira is one clean attempt and one decision away from 3 m with forward dives, with one new skill to learn.',
    ],
    [
      { target: 'level:two' },
      count({ attempts: 12, exact: false, notBefore: parseDay('2027-01-01') }),
      'Mira is at most twelve clean attempts away from Two, and not before 1 January 2027.',
    ],
    [
      {},
      count({ notBefore: parseDay('2027-01-01') }),
      'Mira has to wait for 3 m with forward dives until 1 January 2027.',
    ],
    [{ held: 'approved' }, null, 'Mira has 3 m with forward dives.'],
    [{ held: 'recognised' }, null, 'Mira has 3 m with forward dives, as recognised.'],
    [{ held: 'to review' }, null, 'Mira has 3 m with forward dives, which is to be reviewed.'],
    [{}, null, 'Mira is not ready for 3 m with forward dives yet.'],
    [
      {},
      { kind: 'never', because: [leaf('unmet', examples['too old'])] },
      'Mira cannot reach 3 m with forward dives as things stand.',
    ],
    [
      { finding: metLeaf, blocks: [{ kind: 'stand-down', closes: 'boards', until: null }] },
      count({}),
      'Mira meets all that 3 m with forward dives asks, and has to wait.',
    ],
  ])('%#: %j', (changes, remaining, headline) => {
    expect(sayTarget(target(changes), words, remaining).headline).toBe(headline)
  })

  it('has below it what stands against the target, what binds it and why it is out of reach, each once', () => {
    const said = sayTarget(
      target({
        finding: branch({ kind: 'all', of: [] }, 'unmet', [missing, missing, metLeaf], [0, 1]),
        blocks: [{ kind: 'stand-down', closes: 'boards', until: null }],
      }),
      words,
      { kind: 'never', because: [leaf('unmet', examples['too old'])] },
    )
    expect(said.lines).toEqual([
      'Mira is stood down from the boards until a head coach ends it.',
      'Forward dive, tuck at 1 m still wants one clean attempt seen by a second coach.',
      'Age 15 is too old: at most 14 is asked.',
    ])
  })
})
