import type { Leaf } from '../../curriculum/requirement/model'
import type { Finding, Reason, Status } from './finding'

/** A finding without children. */
export const leafFinding = (node: Leaf, status: Status, reason: Reason, evidence: readonly string[] = []): Finding => ({
  node,
  status,
  reason,
  evidence,
  children: [],
  binding: [],
})

/** A leaf that names what the edition does not have: a draft's mistake, never met. */
export const notInEdition = (node: Leaf, what: string): Finding =>
  leafFinding(node, 'unproven', { code: 'not in this edition', what })
