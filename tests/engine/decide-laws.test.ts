import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeDecision } from '@/lib/assessment/decide'
import { recordEntries } from '@/lib/assessment/lists'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { listLeaves, listTargets } from '@/lib/assessment/readiness/targets'
import { judgeSignOff } from '@/lib/assessment/sign'
import { standardOf } from '@/lib/assessment/standard'
import { standingShortfalls } from '@/lib/assessment/standing'
import { pairKey } from '@/lib/curriculum/edition/curriculum'
import { endOf } from '@/tests/support/record'
import { lawRuns } from '../support/effort'
import { historyOver } from '../support/histories'
import { anyEdition } from '../support/law-editions'
import { lifeUnder } from '../support/lives'
import { today } from '../support/small-coast'

// What a head coach may never do, over random histories: through no decision, no override and no signature does an
// approval or a sign-off come over a standing or unseen critical criterion.
const subject = anyEdition.chain((curriculum) =>
  fc.record({
    curriculum: fc.constant(curriculum),
    record: fc.oneof(historyOver(curriculum), lifeUnder(curriculum)),
  }),
)
const date = endOf(today)
const everything = { coaches: true, days: true, moments: true, certainty: true, count: 2 } as const

describe('whatever happened', () => {
  it('no approval and no override rests on a sign-off over which a critical shortfall stands', {
    timeout: lawRuns.timeout,
  }, () => {
    let approvals = 0
    fc.assert(
      fc.property(subject, ({ curriculum, record }) => {
        const evaluation = evaluationOf(curriculum, record, date)
        const words = { curriculum, today }
        for (const target of listTargets(curriculum))
          for (const outcome of ['approve', 'override'] as const) {
            const request = {
              target,
              outcome,
              reason: 'Because.',
              wantsMoreOf: [],
              diverWants: 'yes',
              onlyCoach: 'Alone.',
            } as const
            const judged = judgeDecision({ evaluation, decider: 'hana', words, standing: [] }, request)
            if (!judged.ok) continue
            approvals++
            expect(judged.found.blocks).toEqual([])
            for (const { node, status } of listLeaves(judged.found.finding)) {
              if (node.kind !== 'signOff' || status !== 'met') continue
              const history = evaluation.history(pairKey(node))
              const current = evaluation.holdings.of(pairKey(node)).all.filter((one) => one.state === 'current')
              expect(current.length).toBeGreaterThan(0)
              // What stands was dived before the signature that answers, never since.
              for (const one of current)
                for (const short of history ? standingShortfalls(history, one.level) : [])
                  expect(history?.attempts.find(({ fact }) => fact.id === short.attempt)?.at).toBeLessThanOrEqual(
                    one.at,
                  )
            }
          }
      }),
      { seed: 430_001, numRuns: lawRuns.each },
    )
    expect(approvals).toBeGreaterThan(20)
  })

  it('no signature comes over a standing or unseen critical criterion, with everything waived', {
    timeout: lawRuns.timeout,
  }, () => {
    let signed = 0
    fc.assert(
      fc.property(subject, ({ curriculum, record }) => {
        const evaluation = evaluationOf(curriculum, record, date)
        for (const pair of curriculum.pairs.values())
          for (const level of curriculum.levels) {
            const request = { pair: pair.key, level: level.key, waiver: everything, reason: 'Because.' }
            const judged = judgeSignOff(evaluation, request, { role: 'head', withinScope: true }, { curriculum, today })
            const history = evaluation.history(pair.key)
            if (!judged.ok || !history) continue
            signed++
            const { shortage } = standardOf(history, curriculum.levelIndex(level.key), everything)
            expect(shortage.standing).toEqual([])
            if (judged.by === 'standard') expect(shortage.unseen).toEqual([])
          }
      }),
      { seed: 430_002, numRuns: lawRuns.each },
    )
    expect(signed).toBeGreaterThan(20)
  })
})

describe('the lists', () => {
  it('name every sign-off in doubt that no current one covers, each with a chain that ends', {
    timeout: lawRuns.timeout,
  }, () => {
    let doubts = 0
    fc.assert(
      fc.property(subject, ({ curriculum, record }) => {
        const evaluation = evaluationOf(curriculum, record, date)
        const listed = recordEntries(evaluation).flatMap((entry) => (entry.list === 'in doubt' ? [entry] : []))
        const expected = evaluation.holdings.pairs.filter((key) => {
          const { all } = evaluation.holdings.of(key)
          const current = Math.max(-1, ...all.filter(({ state }) => state === 'current').map(({ level }) => level))
          return curriculum.pairs.has(key) && all.some(({ state, level }) => state === 'in doubt' && level > current)
        })
        expect(listed.map(({ pair }) => pair).sort()).toEqual([...expected].sort())
        for (const { chain, pair } of listed) {
          doubts++
          expect(chain[0]?.pair).toBe(pair)
          expect(new Set(chain.map((link) => link.pair)).size).toBe(chain.length)
        }
      }),
      { seed: 430_003, numRuns: lawRuns.each },
    )
    expect(doubts).toBeGreaterThan(20)
  })
})
