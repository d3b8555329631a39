import type { CoachScope } from '../../../../generated/prisma/client'
import type { Scope } from '../../../access/scope'
import type { Curriculum, Pair } from '../../../curriculum/edition/curriculum'
import { type Place, placeFacts } from '../../../curriculum/place'
import type { Tx } from '../../../platform/db'
import { type Consents, isRecordingStopped, recordingStopped } from '../../consent'
import type { KeptWithout } from '../../deck/contract'
import { type Refusal, refusal } from '../../deck/refusal'
import type { Evaluation } from '../../readiness/evaluation'
import type { IncidentFact } from '../../record'
import type { Added, Kept } from './kept'

/** What one batch is taken in against; read once, after the divers' rows are locked. */
export interface SyncBatch {
  readonly tx: Tx
  readonly scope: Scope
  readonly receivedAt: number
  /** Programme clock minus device clock, in milliseconds. */
  readonly offset: number
  readonly curriculum: Curriculum
  /** The club of today of each diver of this batch who is of the coach's clubs. */
  readonly divers: ReadonlyMap<string, string>
  /** Attempts of other clubs' divers that were granted to this coach, to be looked at on video. */
  readonly looks: ReadonlySet<string>
  readonly coachScopes: readonly CoachScope[]
  readonly zoneOf: (club: string) => string
  /** How the consents of a diver of this batch stand. */
  readonly consentsOf: (diver: string) => Consents
  /** The diver's record, before this batch, as of a day, paused as at an instant: for whether a skill was open then. */
  readonly evaluationOn: (diver: string, day: number, at: number) => Evaluation | null
  /** An incident of this batch pauses the dives that come after it. */
  readonly noteIncident: (diver: string, incident: IncidentFact) => void
  /** Items of this batch that were refused, and why: their children follow them. */
  readonly refused: Map<string, Refusal>
}

/** Some items of a batch that are judged together: what is kept of what they name, and the rows that they add. */
export interface SyncContext extends SyncBatch {
  readonly kept: Kept
  readonly added: Added
}

export type Taken =
  | { readonly result: 'accepted' | 'known'; readonly keptWithout?: KeptWithout }
  | { readonly result: 'refused'; readonly refusal: Refusal }

export const accepted: Taken = { result: 'accepted' }
export const known: Taken = { result: 'known' }
export const refused = (...parts: Parameters<typeof refusal>): Taken => ({
  result: 'refused',
  refusal: refusal(...parts),
})

/** The child of a refused item is refused with its parent's reason. */
export function parentRefusal(context: SyncContext, parent: string, field: string): Taken | null {
  const why = context.refused.get(parent)
  return why
    ? refused('parent refused', `not kept, because what it belongs to was refused: ${why.message}`, field)
    : null
}

/** The same id once more: known when the content is the same, otherwise refused with both in sight. */
export function sameId(stored: { contentDigest: string }, digest: string, before: string, now: string): Taken {
  if (stored.contentDigest === digest) return known
  return refused(
    'same id, other content',
    `this id is already kept with other content. Kept: ${before}. Sent: ${now}`,
    'id',
  )
}

/** The refusal of what was made after the consent to keep a record was withdrawn; `at` is its programme time. */
export const consentRefusal = (context: SyncContext, diver: string, at: number): Taken | null =>
  isRecordingStopped(context.consentsOf(diver), at) ? refused('no consent', recordingStopped) : null

/** The pair under the edition in force, or the refusal that says what is unknown. */
export function findPair(context: SyncContext, item: { skill: string; place: Place; atLevel: string }): Pair | Taken {
  const skill = context.curriculum.skills.get(item.skill)
  if (!skill) return refused('unknown skill', `the curriculum has no skill "${item.skill}"`, 'skill')
  const pair = context.curriculum.pairs.get(`${item.skill}@${item.place}`)
  if (!pair) {
    const taught = skill.places.map((at) => placeFacts[at.place].label).join(', ')
    return refused(
      'unknown skill',
      `${skill.title} is not taught at ${placeFacts[item.place].label}; it is at: ${taught}`,
      'place',
    )
  }
  if (context.curriculum.levelIndex(item.atLevel) < 0)
    return refused('unknown level', `the curriculum has no level "${item.atLevel}"`, 'atLevel')
  return pair
}

export const isTaken = (value: Pair | Taken): value is Taken => 'result' in value

/** The diver's club today, or the refusal: outside the coach's clubs a diver does not exist. */
export function findClub(context: SyncContext, diver: string): string | null {
  return context.divers.get(diver) ?? null
}

export const unknownDiver: Taken = refused(
  'unknown diver',
  'no diver of your clubs has this id; she may have moved to another club. Open the deck again to see who is here',
  'diver',
)
