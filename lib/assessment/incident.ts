import type { PairKey } from '../curriculum/edition/curriculum'
import type { Refused } from './outcome'
import type { Evaluation } from './readiness/evaluation'
import type { DecisionFact, DiverRecord, IncidentFact, SignOffFact } from './record'
import type { Instant } from './time'

/** The incidents that no head coach has cleared, the newest first. */
export const openIncidents = (record: DiverRecord): IncidentFact[] =>
  record.incidents.filter(({ clearedAt }) => clearedAt === null).sort((a, b) => b.happenedAt - a.happenedAt)

/**
 * The record as it paused the diver at an instant: with the incidents that had happened by then and were not cleared yet,
 * whenever they became known. For whether a skill was open when a dive was made.
 */
export const pausedAsAt = (record: DiverRecord, at: Instant): DiverRecord => ({
  ...record,
  incidents: record.incidents
    .filter(({ happenedAt, receivedAt }) => Math.min(happenedAt, receivedAt) <= at)
    .filter(({ clearedAt }) => clearedAt === null || clearedAt > at)
    .map((incident) => ({ ...incident, clearedAt: null })),
})

/**
 * What was signed and decided after an incident had happened and before it was known here: the head coach looks again. Of
 * the sign-offs those that it pauses, its own pair and what rests on it; after a knock to the head all.
 */
export function signedUnaware(
  { record, holdings }: Evaluation,
  { kind, pair, happenedAt, receivedAt }: IncidentFact,
): { readonly signOffs: readonly SignOffFact[]; readonly decisions: readonly DecisionFact[] } {
  const unaware = (at: Instant): boolean => happenedAt < at && at < receivedAt
  const touches = (key: PairKey): boolean => key === pair || holdings.restsOn(key).has(pair)
  return {
    signOffs: record.signOffs.filter(
      (one) => one.revokedAt === null && unaware(one.signedAt) && (kind === 'knock to the head' || touches(one.pair)),
    ),
    decisions: record.decisions.filter(
      ({ decidedAt, outcome }) => (outcome === 'approve' || outcome === 'override') && unaware(decidedAt),
    ),
  }
}

/** What a head coach writes to clear an incident; `statement`: that medical advice was followed after a knock to the head. */
export interface ReleaseWords {
  readonly reason: string
  readonly statement: string
}

/** What stands against clearing an incident in these words; null when nothing does. */
export function refuseRelease({ kind, clearedAt }: IncidentFact, { reason, statement }: ReleaseWords): Refused | null {
  if (clearedAt !== null) return { code: 'cleared before', message: 'It was cleared before; the page shows by whom.' }
  if (!reason.trim())
    return {
      code: 'no reason',
      message: 'Say in writing what was done about it and why the diver may go on.',
      field: 'reason',
    }
  if (kind === 'knock to the head' && !statement.trim())
    return {
      code: 'no statement',
      message: 'After a knock to the head: say in writing that medical advice was followed, and whose. No diagnosis.',
      field: 'statement',
    }
  return null
}
