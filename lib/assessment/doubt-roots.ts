import type { PairKey } from '../curriculum/edition/curriculum'
import type { DoubtLink } from './doubt-chain'

/** What fell, and what is in doubt because of it: one thing to put right, however much rests on it. */
export interface DoubtRoot {
  /** The end of the chains: in doubt by itself, lapsed, revoked or never signed. */
  readonly link: DoubtLink
  /** Pairs in doubt that lead to it, in the order in which they came; without the root itself. */
  readonly resting: readonly PairKey[]
}

/** Doubts gathered by what fell at the end of their chains; what most rests on comes first. */
export function doubtRoots(chains: readonly (readonly DoubtLink[])[]): DoubtRoot[] {
  const roots = new Map<PairKey, { link: DoubtLink; resting: PairKey[] }>()
  for (const chain of chains) {
    const [first, last] = [chain[0], chain.at(-1)]
    if (!first || !last) continue
    const root = roots.get(last.pair) ?? { link: last, resting: [] }
    if (first.pair !== last.pair) root.resting.push(first.pair)
    roots.set(last.pair, root)
  }
  return [...roots.values()].sort((a, b) => b.resting.length - a.resting.length)
}
