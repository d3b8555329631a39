import { digestOf } from './ledger/write-event'
import { effectiveObservations } from './observation'
import { type Question, questionsUnder } from './question'
import type { Evaluation } from './readiness/evaluation'
import type { TargetFinding } from './readiness/finding'

/**
 * What a decision would rest on, as a digest: the finding, what stands against it, the observations in force of every
 * attempt in its evidence, and of the questions that stand (`standing`) those about these attempts with their answers. When it
 * has changed, the head coach has not seen what she decides on.
 */
export function basisOf({ record }: Evaluation, found: TargetFinding, standing: readonly Question[]): string {
  const cited = new Set(found.finding.evidence)
  const seen = record.attempts
    .filter((attempt) => cited.has(attempt.id))
    .map((attempt) => [attempt.id, effectiveObservations(attempt.observations).map(({ id }) => id)] as const)
  const asked = questionsUnder(standing, found).map(({ asked, answers, correction }) => ({
    question: asked.id,
    answers: answers.map(({ id }) => id).sort(),
    correction,
  }))
  return digestOf({ found, seen, asked })
}
