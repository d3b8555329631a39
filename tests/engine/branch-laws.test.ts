import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { branchFinding, rank } from '@/lib/assessment/readiness/branch'
import { statuses } from '@/lib/assessment/readiness/finding'
import { leafFinding } from '@/lib/assessment/readiness/leaf'
import type { Branch, Requirement } from '@/lib/curriculum/requirement/model'

describe('of branches', () => {
  const venue: Requirement = { kind: 'venue', feature: 'board-3m' }
  const children = fc.array(fc.constantFrom(...statuses), { maxLength: 6 })
  const reason = { code: 'venue unknown', feature: 'board-3m' } as const
  const findings = (all: readonly (typeof statuses)[number][]) =>
    all.map((status, index) => leafFinding({ ...venue, reason: String(index) }, status, reason, [String(index)]))
  const branch = (node: { kind: 'all' | 'any' } | { kind: 'atLeast'; n: number }, of: ReturnType<typeof findings>) =>
    branchFinding({ ...node, of: of.map((child) => child.node) } as Branch, of)

  it('the order of children is irrelevant, to the status and to what binds', () => {
    fc.assert(
      fc.property(children, fc.nat(6), fc.infiniteStream(fc.nat()), (all, n, order) => {
        const given = findings(all)
        const turned = [...given].sort(() => (order.next().value % 2 === 0 ? 1 : -1))
        for (const node of [{ kind: 'all' }, { kind: 'any' }, { kind: 'atLeast', n }] as const) {
          const [one, other] = [branch(node, given), branch(node, turned)]
          expect(other.status).toBe(one.status)
          expect([...other.evidence].sort()).toEqual([...one.evidence].sort())
        }
      }),
      { seed: 410_007, numRuns: 1000 },
    )
  })

  it('at least all of them is all, at least one is any; a better child never makes a worse branch', () => {
    fc.assert(
      fc.property(children, fc.nat(5), fc.nat(6), (all, which, n) => {
        const given = findings(all)
        if (all.length > 0) {
          const every = branch({ kind: 'atLeast', n: all.length }, given)
          expect(every.status).toBe(branch({ kind: 'all' }, given).status)
        }
        const one = branch({ kind: 'atLeast', n: 1 }, given)
        expect([one.status, one.binding]).toEqual([
          branch({ kind: 'any' }, given).status,
          branch({ kind: 'any' }, given).binding,
        ])
        const better = findings(all.map((status, index) => (index === which ? 'met' : status)))
        for (const node of [{ kind: 'all' }, { kind: 'any' }, { kind: 'atLeast', n }] as const)
          expect(rank(branch(node, better).status)).toBeGreaterThanOrEqual(rank(branch(node, given).status))
      }),
      { seed: 410_008, numRuns: 1000 },
    )
  })

  it('mending every binding child of a branch that is not met makes it met', () => {
    fc.assert(
      fc.property(children, fc.nat(6), (all, n) => {
        const given = findings(all)
        for (const node of [{ kind: 'all' }, { kind: 'any' }, { kind: 'atLeast', n }] as const) {
          const found = branch(node, given)
          const mended = findings(all.map((status, index) => (found.binding.includes(index) ? 'met' : status)))
          const possible = node.kind === 'all' || all.length >= (node.kind === 'any' ? 1 : n)
          if (possible) expect(branch(node, mended).status).toBe('met')
          // Nothing that is met is blamed, and what is met rests on met children only.
          for (const index of found.binding) expect(all[index] === 'met').toBe(found.status === 'met')
        }
      }),
      { seed: 410_009, numRuns: 1000 },
    )
  })
})
