import type { Instant } from './time'

/** What a head coach made of a moment. That a film did not open says nothing of the dive, and takes nothing from the evidence. */
export const checkKinds = ['accepted', 'questioned', 'withdrawn', 'not reachable'] as const
export type CheckKind = (typeof checkKinds)[number]

/** One row of the review of evidence: a head coach, a moment, and what she made of it. Never changed, only followed. */
export interface MomentCheck {
  readonly id: string
  readonly moment: string
  /** The observation that the moment belongs to, and its attempt. */
  readonly observation: string
  readonly attempt: string
  readonly by: string
  readonly at: Instant
  readonly kind: CheckKind
}

const inOrder = (a: MomentCheck, b: MomentCheck): number => a.at - b.at || (a.id < b.id ? -1 : 1)

/** What stands of one head coach on one moment: her last word on it, unless she took it back. */
export function verdictOf(checks: readonly MomentCheck[], moment: string, by: string): MomentCheck | null {
  const last = checks
    .filter((check) => check.moment === moment && check.by === by && check.kind !== 'not reachable')
    .sort(inOrder)
    .at(-1)
  return last && last.kind !== 'withdrawn' ? last : null
}

/** Whether the film of a moment did not open when somebody last looked at it; whoever took a question back did not look. */
export const isUnreachable = (checks: readonly MomentCheck[], moment: string): boolean =>
  checks
    .filter((check) => check.moment === moment && check.kind !== 'withdrawn')
    .sort(inOrder)
    .at(-1)?.kind === 'not reachable'

/** How far one head coach has come with some moments. `unreachable` counts beside the others, for whoever looked last. */
export interface CheckTally {
  readonly moments: number
  readonly accepted: number
  readonly questioned: number
  readonly unreachable: number
}

/** Counts what one head coach (`by`) made of some moments. */
export function tallyChecks(checks: readonly MomentCheck[], moments: readonly string[], by: string): CheckTally {
  const kinds = moments.map((moment) => verdictOf(checks, moment, by)?.kind)
  return {
    moments: moments.length,
    accepted: kinds.filter((kind) => kind === 'accepted').length,
    questioned: kinds.filter((kind) => kind === 'questioned').length,
    unreachable: moments.filter((moment) => isUnreachable(checks, moment)).length,
  }
}
