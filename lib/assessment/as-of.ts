import type { AttemptFact, DiverRecord } from './record'
import type { AsOf, Instant } from './time'

interface Received {
  readonly receivedAt: Instant
}

/**
 * The record as it was known at `date`: only what had been received by its instant, with later revocations, releases,
 * acceptances and clearances undone. Attempts are put in the order of their dives. An attempt whose date has not come
 * stays: it earns nothing (attempt.ts), but what was dangerous in it counts at once.
 */
export function asOf(record: DiverRecord, date: AsOf): DiverRecord {
  const known = <Fact extends Received>(facts: readonly Fact[]): Fact[] =>
    facts.filter((fact) => fact.receivedAt <= date.instant)
  const byThen = (instant: Instant | null): Instant | null =>
    instant !== null && instant <= date.instant ? instant : null
  return {
    ...record,
    attempts: known(record.attempts)
      .map((attempt) => ({
        ...attempt,
        releasedAt: byThen(attempt.releasedAt),
        observations: known(attempt.observations).map((observation) => ({
          ...observation,
          raiseAcceptedAt: byThen(observation.raiseAcceptedAt),
          linkedAt: byThen(observation.linkedAt),
        })),
      }))
      .sort(byDive),
    signOffs: known(record.signOffs).map((fact) => ({ ...fact, revokedAt: byThen(fact.revokedAt) })),
    recognitions: known(record.recognitions).map((fact) => ({ ...fact, revokedAt: byThen(fact.revokedAt) })),
    decisions: known(record.decisions),
    incidents: known(record.incidents).map((fact) => ({ ...fact, clearedAt: byThen(fact.clearedAt) })),
    standDowns: known(record.standDowns),
    venue: known(record.venue),
  }
}

/** The order of dives: when they were attempted, ties by id. */
export const byDive = (a: AttemptFact, b: AttemptFact): number =>
  a.attemptedAt - b.attemptedAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
