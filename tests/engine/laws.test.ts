import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rank } from '@/lib/assessment/readiness/branch'
import { find } from '@/lib/assessment/readiness/evaluate'
import { type Context, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { readySince } from '@/lib/assessment/readiness/ready-since'
import { evaluateTarget, listTargets as listTargetKeys } from '@/lib/assessment/readiness/targets'
import type { AttemptFact, DiverRecord, TargetKey } from '@/lib/assessment/record'
import { standardOf } from '@/lib/assessment/standard'
import { standingShortfalls } from '@/lib/assessment/standing'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { Rating } from '@/lib/curriculum/model'
import type { Requirement } from '@/lib/curriculum/requirement/model'
import { listOfKind } from '@/lib/curriculum/requirement/references'
import { listTargets } from '@/lib/curriculum/tree/target'
import { readCurriculum } from '@/seed/read-curriculum'
import { allRated, anAttempt, aRecord, endOf } from '@/tests/support/record'
import { lawRuns } from '../support/effort'
import { historyOver } from '../support/histories'
import { anyEdition } from '../support/law-editions'
import { lifeUnder } from '../support/lives'
import { curriculumOf, today } from '../support/small-coast'

// The laws of findings, by dominance, over random histories with sign-offs, recognitions, doubts, lapses, moves,
// revocations and several coaches. `PLUMBLINE_LONG=1` runs them ten times as long.
const date = endOf(today)
const contexts: readonly Context[] = ['training', 'advancement']

/** Every question that an edition can ask about a diver: all targets, all sign-offs at all levels, criterion leaves and lists. */
function questionsOf(curriculum: Curriculum): Requirement[] {
  const requirements = listTargets(curriculum).flatMap(({ requirement }) => requirement ?? [])
  return [
    ...requirements,
    ...requirements.flatMap((node) => listOfKind(node, 'criterion').map((placed) => placed.node)),
    ...curriculum.levels.map(({ key }): Requirement => ({ kind: 'level', level: key })),
    ...curriculum.boardMoves.map(({ family, to }): Requirement => ({ kind: 'boardMove', family, to })),
    ...[...curriculum.events.keys()].map((event): Requirement => ({ kind: 'diveList', event })),
    ...[...curriculum.pairs.values()].flatMap(({ holding }) =>
      curriculum.levels.map(({ key }): Requirement => ({ kind: 'signOff', ...holding, atLevel: key })),
    ),
  ]
}

const questions = new WeakMap<Curriculum, Requirement[]>()
function ranksOf(curriculum: Curriculum, record: DiverRecord): number[] {
  const asked = questions.get(curriculum) ?? questionsOf(curriculum)
  questions.set(curriculum, asked)
  const evaluation = evaluationOf(curriculum, record, date)
  return contexts.flatMap((context) => asked.map((node) => rank(find(evaluation, node, context).status)))
}

/** The first question that `better` answers worse than `worse`; null when there is none. */
function brokenBy(curriculum: Curriculum, worse: DiverRecord, better: DiverRecord): string | null {
  const low = ranksOf(curriculum, worse)
  const high = ranksOf(curriculum, better)
  const index = low.findIndex((value, index) => value > (high[index] ?? -1))
  if (index < 0) return null
  const asked = questions.get(curriculum) ?? []
  const context = contexts[Math.floor(index / asked.length)]
  return `${context}: ${JSON.stringify(asked[index % asked.length])} from ${low[index]} to ${high[index]}`
}

// Two in three are facts in any order, one is what the rules would have let coaches write.
const subject = anyEdition.chain((curriculum) =>
  fc.record({
    curriculum: fc.constant(curriculum),
    record: fc.oneof({ weight: 2, arbitrary: historyOver(curriculum) }, lifeUnder(curriculum)),
  }),
)

const { document } = readCurriculum(fileURLToPath(new URL('../../seed/curriculum', import.meta.url)))
const demo = document && indexEdition(document, 'd'.repeat(64))
/** The demo's curriculum, over few of its pairs and over all. */
const demoSubject = fc.record({
  curriculum: fc.constant(demo ?? curriculumOf()),
  record: demo ? fc.oneof(historyOver(demo, 40), lifeUnder(demo)) : fc.constant(aRecord()),
})

/** One more attempt, received just now and dived at any time before, rated the same everywhere. */
const oneMore = (all: Rating, of = subject) =>
  of.chain(({ curriculum, record }) =>
    fc
      .record({
        pair: fc.constantFrom(...curriculum.pairs.values()),
        ago: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, fc.nat(150)),
        minute: fc.integer({ min: -400, max: 500 }),
        called: fc.boolean(),
        closedThen: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
      })
      .map(({ pair, ago, ...facts }) => {
        const changes = { ...facts, id: 'one more', receivedAt: date.instant, rated: allRated(pair, all) }
        const attempt = anAttempt(pair.key, today - ago, { ...changes, coach: 'dora' })
        return { curriculum, record, more: { ...record, attempts: [...record.attempts, attempt] } }
      }),
  )

/** The history with one explicit rating raised, and as it was. */
const oneRaised = (of = subject) =>
  of.chain(({ curriculum, record }) => {
    const rated = record.attempts.flatMap((attempt, a) =>
      attempt.observations.flatMap((seen, o) => Object.keys(seen.ratings).map((key) => ({ a, o, key }))),
    )
    if (rated.length === 0) return fc.constant({ curriculum, record, raised: record })
    return fc.tuple(fc.constantFrom(...rated), fc.integer({ min: 1, max: 4 })).map(([where, by]) => ({
      curriculum,
      record,
      raised: { ...record, attempts: record.attempts.map((one, a) => (a === where.a ? raise(one, where, by) : one)) },
    }))
  })

const raise = (attempt: AttemptFact, { o, key }: { o: number; key: string }, by: number): AttemptFact => ({
  ...attempt,
  observations: attempt.observations.map((seen, index) =>
    index === o
      ? { ...seen, ratings: { ...seen.ratings, [key]: Math.min(4, (seen.ratings[key] ?? 0) + by) as Rating } }
      : seen,
  ),
})

describe('by dominance', () => {
  it('one more attempt that is rated 4 everywhere lowers no status', { timeout: lawRuns.timeout }, () => {
    fc.assert(
      fc.property(oneMore(4), ({ curriculum, record, more }) => {
        expect(brokenBy(curriculum, record, more)).toBeNull()
      }),
      { seed: 410_001, numRuns: lawRuns.each },
    )
  })

  it('one more attempt that is rated 0 everywhere raises none', { timeout: lawRuns.timeout }, () => {
    fc.assert(
      fc.property(oneMore(0), ({ curriculum, record, more }) => {
        expect(brokenBy(curriculum, more, record)).toBeNull()
      }),
      { seed: 410_002, numRuns: lawRuns.each },
    )
  })

  it('raising a rating lowers no status, lowering one raises none', { timeout: lawRuns.timeout }, () => {
    fc.assert(
      fc.property(oneRaised(), ({ curriculum, record, raised }) => {
        expect(brokenBy(curriculum, record, raised)).toBeNull()
      }),
      { seed: 410_003, numRuns: lawRuns.each },
    )
  })
})

describe('over the demo curriculum, by dominance', () => {
  it('is read', () => {
    expect(demo?.pairs.size).toBeGreaterThanOrEqual(22)
  })

  it(
    '4 everywhere lowers nothing, 0 everywhere raises nothing, a raised rating lowers nothing',
    () => {
      const runs = { numRuns: Math.floor(lawRuns.each / 6) }
      fc.assert(
        fc.property(oneMore(4, demoSubject), ({ curriculum, record, more }) => {
          expect(brokenBy(curriculum, record, more)).toBeNull()
        }),
        { seed: 410_011, ...runs },
      )
      fc.assert(
        fc.property(oneMore(0, demoSubject), ({ curriculum, record, more }) => {
          expect(brokenBy(curriculum, more, record)).toBeNull()
        }),
        { seed: 410_012, ...runs },
      )
      fc.assert(
        fc.property(oneRaised(demoSubject), ({ curriculum, record, raised }) => {
          expect(brokenBy(curriculum, record, raised)).toBeNull()
        }),
        { seed: 410_013, ...runs },
      )
    },
    lawRuns.timeout,
  )
})

describe('of a history', () => {
  it('success at a level is success at every lower one, and so is the standard', { timeout: lawRuns.timeout }, () => {
    fc.assert(
      fc.property(subject, ({ curriculum, record }) => {
        const evaluation = evaluationOf(curriculum, record, date)
        for (const key of curriculum.pairs.keys()) {
          const history = evaluation.history(key)
          for (let level = 1; history && level < curriculum.levels.length; level++) {
            history.verdicts(level).forEach((verdict, index) => {
              if (verdict === 'success') expect(history.verdicts(level - 1)[index]).toBe('success')
            })
            if (standardOf(history, level).holds) expect(standardOf(history, level - 1).holds).toBe(true)
          }
        }
      }),
      { seed: 410_004, numRuns: lawRuns.each },
    )
  })

  it('a standing or unseen critical criterion is never outvoted or waived', { timeout: lawRuns.timeout }, () => {
    const waiver = { coaches: true, days: true, moments: true, certainty: true, count: 0 } as const
    fc.assert(
      fc.property(subject, ({ curriculum, record }) => {
        const evaluation = evaluationOf(curriculum, record, date)
        for (const [key, pair] of curriculum.pairs) {
          const history = evaluation.history(key)
          for (let level = pair.level; history && level < curriculum.levels.length; level++) {
            const atLevel = curriculum.levels[level]?.key ?? ''
            const { status } = find(evaluation, { kind: 'signOff', ...pair.holding, atLevel }, 'advancement')
            const standing = standingShortfalls(history, level)
            const found = standardOf(history, level, waiver)
            if (standing.length > 0 || found.shortage.unseen.length > 0) expect(found.holds).toBe(false)
            const { all } = evaluation.holdings.of(key)
            const signed = all.filter((one) => one.level >= level && one.state === 'current')
            // Whatever makes it met was signed after the last shortfall at its own level, or was shown again since.
            if (status === 'met') expect(signed.length).toBeGreaterThan(0)
            for (const one of signed)
              for (const short of standingShortfalls(history, one.level)) {
                const attempt = history.attempts.find(({ fact }) => fact.id === short.attempt)
                expect(attempt?.at).toBeLessThanOrEqual(one.at)
              }
          }
        }
      }),
      { seed: 410_005, numRuns: lawRuns.each },
    )
  })

  it('what was signed under the rules is never current over a standing shortfall', { timeout: lawRuns.timeout }, () => {
    const lives = anyEdition.chain((curriculum) => fc.tuple(fc.constant(curriculum), lifeUnder(curriculum)))
    let current = 0
    fc.assert(
      fc.property(lives, fc.nat(60), ([curriculum, record], ago) => {
        const evaluation = evaluationOf(curriculum, record, endOf(today - ago))
        for (const key of evaluation.holdings.pairs)
          for (const one of evaluation.holdings.of(key).all) {
            const history = evaluation.history(key)
            if (!history || one.state !== 'current') continue
            current++
            expect(standingShortfalls(history, one.level)).toEqual([])
          }
      }),
      { seed: 410_010, numRuns: lawRuns.each },
    )
    expect(current).toBeGreaterThan(lawRuns.each)
  })

  it('the order of rows is irrelevant, and what is received later changes nothing', {
    timeout: lawRuns.timeout,
  }, () => {
    fc.assert(
      fc.property(oneMore(0), fc.infiniteStream(fc.nat()), ({ curriculum, record, more }, order) => {
        const shuffle = <Item>(items: readonly Item[]): Item[] =>
          items
            .map((item) => ({ item, at: order.next().value ?? 0 }))
            .sort((a, b) => a.at - b.at)
            .map(({ item }) => item)
        const shuffled = {
          ...record,
          attempts: shuffle(record.attempts),
          signOffs: shuffle(record.signOffs),
          decisions: shuffle(record.decisions),
          recognitions: shuffle(record.recognitions),
        }
        const known = ranksOf(curriculum, record)
        expect(ranksOf(curriculum, shuffled)).toEqual(known)
        const later = more.attempts.map((one) =>
          one.id === 'one more' ? { ...one, receivedAt: date.instant + 1 } : one,
        )
        expect(ranksOf(curriculum, { ...more, attempts: later })).toEqual(known)
      }),
      { seed: 410_006, numRuns: lawRuns.each },
    )
  })
})

describe('ready since', () => {
  it('is what asking on every day would find', { timeout: lawRuns.timeout }, () => {
    const lives = anyEdition.chain((curriculum) =>
      fc.tuple(fc.constant(curriculum), fc.oneof(historyOver(curriculum), lifeUnder(curriculum)), fc.nat(120)),
    )
    let ready = 0
    fc.assert(
      fc.property(lives, ([curriculum, record, ago]) => {
        const isReady = (target: TargetKey, day: number) => evaluateTarget(curriculum, record, target, endOf(day)).ready
        for (const target of listTargetKeys(curriculum)) {
          const day = today - ago
          let first = isReady(target, day) ? day : null
          while (first !== null && isReady(target, first - 1)) first--
          expect(readySince(curriculum, record, target, endOf(day), 'UTC')).toBe(first)
          if (first !== null && first < day) ready++
        }
      }),
      { seed: 410_014, numRuns: Math.floor(lawRuns.each / 3) },
    )
    expect(ready).toBeGreaterThan(0)
  })
})
