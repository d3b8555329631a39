import type { Branch } from '../../curriculum/requirement/model'
import { type Finding, type Status, statuses } from './finding'

/** Statuses as numbers, from 0 unmet to 3 met: `all` is the minimum, `any` the maximum. */
export const rank = (status: Status): number => statuses.length - 1 - statuses.indexOf(status)

const statusOf = (rank: number): Status => statuses[statuses.length - 1 - rank] ?? 'unmet'

/** How many children a branch wants met. */
const wanted = (node: Branch): number => (node.kind === 'all' ? node.of.length : node.kind === 'any' ? 1 : node.n)

/** `atLeast n` is the n-th largest of its children; `all` and `any` are its ends. Met of none, unmet of too few. */
function nthLargest(ranks: readonly number[], n: number): number {
  return n <= 0 ? rank('met') : ([...ranks].sort((a, b) => b - a)[n - 1] ?? rank('unmet'))
}

/**
 * The children to follow. Of a met node those it rests on. Of `all`, every child not met; otherwise
 * the best of those not met, as many as are missing, ties included (of `any`, one is missing: those at the maximum).
 */
function bindingOf(node: Branch, ranks: readonly number[]): number[] {
  const n = wanted(node)
  const met = indexesWhere(ranks, (value) => value === rank('met'))
  if (met.length >= n) return met
  const short = ranks.filter((value) => value < rank('met')).sort((a, b) => b - a)
  const last = node.kind === 'all' ? rank('unmet') : (short[n - met.length - 1] ?? rank('unmet'))
  return indexesWhere(ranks, (value) => value < rank('met') && value >= last)
}

const indexesWhere = (ranks: readonly number[], test: (rank: number) => boolean): number[] =>
  ranks.flatMap((value, index) => (test(value) ? [index] : []))

/** The finding of a branch from those of its children, in their order. */
export function branchFinding(node: Branch, children: readonly Finding[]): Finding {
  const ranks = children.map((child) => rank(child.status))
  const binding = bindingOf(node, ranks)
  const met = ranks.filter((value) => value === rank('met')).length
  return {
    node,
    status: statusOf(nthLargest(ranks, wanted(node))),
    reason: { code: 'branch', met, wanted: wanted(node), outOf: children.length },
    evidence: [...new Set(binding.flatMap((index) => children[index]?.evidence ?? []))],
    children,
    binding,
  }
}
