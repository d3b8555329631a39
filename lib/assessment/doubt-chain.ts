import type { PairKey } from '../curriculum/edition/curriculum'
import type { SignedState } from './holding-state'
import type { Evaluation } from './readiness/evaluation'
import { doubtToSay } from './readiness/leaf-sign-off'
import type { Doubt } from './shortfall'

/** One step of a doubt: the pair, why it is in doubt, or how what it rests on has fallen. */
export interface DoubtLink {
  readonly pair: PairKey
  /** `not signed` where nothing unrevoked is there. */
  readonly state: 'in doubt' | 'lapsed' | 'revoked' | 'not signed'
  /** The doubt that leads on; null at the end of the chain. */
  readonly doubt: Doubt | null
  /** Of a lapse: the last valid day. */
  readonly until: SignedState['validUntil'] | null
}

/**
 * From a sign-off in doubt down to what fell: a doubt of its own ends the chain, one from below leads to the pair that
 * is not current, and on. Each pair is named once.
 */
export function doubtChain(evaluation: Evaluation, pair: PairKey, doubt: Doubt): DoubtLink[] {
  const links: DoubtLink[] = [{ pair, state: 'in doubt', doubt, until: null }]
  const named = new Set([pair])
  for (let next = doubt; next.kind === 'below' && !named.has(next.pair); ) {
    named.add(next.pair)
    const { by } = evaluation.holdings.of(next.pair)
    const state = by === null || by.state === 'current' ? 'not signed' : by.state
    const on = (by?.state === 'in doubt' && doubtToSay(by.doubts)) || null
    links.push({ pair: next.pair, state, doubt: on, until: state === 'lapsed' ? (by?.validUntil ?? null) : null })
    if (!on) break
    next = on
  }
  return links
}
