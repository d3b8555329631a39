import type { Finding, Status } from './finding'
import { countWord } from './grammar'
import { sayReason } from './say-reason'
import type { Words } from './wording'

/** A finding as it is read: sentences along the binding children only. Plain data, so that a page can hand it on. */
export interface ExplainedNode {
  readonly status: Status
  readonly sentence: string
  /** The author's reason, as written. */
  readonly why: string | null
  readonly evidence: readonly string[]
  readonly children: readonly ExplainedNode[]
  /** Fewer of the children are asked than there are. */
  readonly choice: boolean
  /** Conditions that are met and not followed. */
  readonly metBeside: number
  /** "4 more are met"; null when there are none. */
  readonly metLine: string | null
}

const metLine = (count: number): string | null =>
  count === 0 ? null : `${count} more ${count === 1 ? 'is' : 'are'} met`

function bindingChildren({ children, binding }: Finding): Finding[] {
  return binding.flatMap((index) => children[index] ?? [])
}

/** The leaves that a finding rests on, in the order in which they are read. */
export function bindingLeaves(finding: Finding): Finding[] {
  return finding.binding.length === 0 ? [finding] : bindingChildren(finding).flatMap(bindingLeaves)
}

const saidAtMost = 2

/** What binds a finding as running text for a list: its first leaves, then how many more there are. */
export function sayBinding(finding: Finding, words: Words): string {
  const leaves = bindingLeaves(finding)
  const more = leaves.length - saidAtMost
  const said = leaves.slice(0, saidAtMost).map((leaf) => sayReason(leaf, words))
  return [...said, ...(more > 0 ? [`And ${countWord(more)} more.`] : [])].join(' ')
}

/** Whether the levels and moves inside a finding are read out with it, or only named because they stand beside it. */
export type Nested = 'read out' | 'named'

const isTarget = ({ node }: Finding): boolean => node.kind === 'level' || node.kind === 'boardMove'

/**
 * Follows the binding children of a finding and says each. A branch with a single one gives way to it, and hands down
 * its author's reason and its count of met conditions, so that nobody reads "one of these" above one sentence.
 */
export function explain(finding: Finding, words: Words, nested: Nested = 'read out'): ExplainedNode {
  const children = bindingChildren(finding).map((child) =>
    explain(nested === 'named' && isTarget(child) ? { ...child, children: [], binding: [] } : child, words, nested),
  )
  const followed = new Set(finding.binding)
  const beside = finding.children.filter((child, index) => child.status === 'met' && !followed.has(index)).length
  const why = finding.node.reason ?? null
  const only = children.length === 1 ? children[0] : undefined
  // A level or move says itself that it is to review, and its one child says why.
  if (only && finding.reason.code === 'branch') {
    const metBeside = only.metBeside + beside
    return { ...only, why: only.why ?? why, metBeside, metLine: metLine(metBeside) }
  }
  return {
    status: finding.status,
    sentence: sayReason(finding, words),
    why,
    evidence: finding.evidence,
    children,
    choice: finding.reason.code === 'branch' && finding.reason.wanted < finding.reason.outOf,
    metBeside: beside,
    metLine: metLine(beside),
  }
}
