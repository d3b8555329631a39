import { digestOf } from './ledger/write-event'
import { effectiveObservations } from './observation'
import type { Evaluation } from './readiness/evaluation'
import type { TargetFinding } from './readiness/finding'

/**
 * What a decision would rest on, as a digest: the finding, what stands against it, and the observations in force of every
 * attempt in its evidence. When it has changed, the head coach has not seen what she decides on.
 */
export function basisOf({ record }: Evaluation, found: TargetFinding): string {
  const cited = new Set(found.finding.evidence)
  const seen = record.attempts
    .filter((attempt) => cited.has(attempt.id))
    .map((attempt) => [attempt.id, effectiveObservations(attempt.observations).map(({ id }) => id)] as const)
  return digestOf({ found, seen })
}
