import type { Scope } from '../../access/scope'
import type { Place } from '../../curriculum/place'
import type { Tx } from '../../platform/db'
import { programmeInstant } from '../device-clock'
import type { IncidentFact, IncidentKind } from '../record'
import { appendLedger } from './ledger'
import { keepWords } from './words'

/** An incident as it was seen; `offset` is the programme's clock minus the one that `happenedAt` was read from. */
export interface IncidentSeen {
  readonly id: string
  readonly diver: string
  readonly club: string
  readonly skill: string
  readonly place: Place
  readonly what: IncidentKind
  readonly attempt: string | null
  readonly note: string | null
  readonly happenedAt: number
  readonly offset: number
  readonly contentDigest: string
}

/** Appends an incident to the ledger and the table, inside a transaction that holds the diver's row; answers the fact. */
export async function appendIncident(tx: Tx, scope: Scope, seen: IncidentSeen): Promise<IncidentFact> {
  const { id, diver, club, skill, place, what, note } = seen
  const about = { club, diver, writtenBy: scope.account }
  const words = note?.trim() ? await keepWords(tx, about, note.trim()) : null
  const ledgerSeq = await appendLedger(tx, scope, {
    kind: 'incident recorded',
    incident: id,
    diver,
    club,
    skill,
    place,
    what,
    by: scope.account,
  })
  await tx.incident.create({
    data: {
      id,
      clubId: club,
      diverId: diver,
      attemptId: seen.attempt,
      skill,
      place,
      kind: what,
      by: scope.account,
      happenedAt: new Date(seen.happenedAt),
      offsetMs: seen.offset,
      receivedAt: new Date(scope.at),
      noteId: words?.id ?? null,
      contentDigest: seen.contentDigest,
      ledgerSeq,
    },
  })
  return {
    id,
    pair: `${skill}@${place}`,
    kind: what,
    happenedAt: programmeInstant(seen.happenedAt, seen.offset),
    receivedAt: scope.at,
    clearedAt: null,
  }
}
