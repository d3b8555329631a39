import type { Attempt, Call, Incident, Observation, Prisma } from '../../../../generated/prisma/client'
import type { Scope } from '../../../access/scope'
import type { Curriculum } from '../../../curriculum/edition/curriculum'
import { findEdition, isDraft } from '../../../curriculum/store/editions'
import type { Tx } from '../../../platform/db'
import type { DeckItem } from '../../deck/contract'
import type { AttemptRow, ObservationRow } from '../record-rows'

/** A call, an attempt, an observation that is kept, or that this batch keeps: what is asked of it. */
export type KeptCall = Pick<
  Call,
  'id' | 'clubId' | 'diverId' | 'skill' | 'place' | 'count' | 'deviceId' | 'calledAt' | 'contentDigest'
>
export type KeptAttempt = Pick<
  Attempt,
  'id' | 'clubId' | 'diverId' | 'skill' | 'place' | 'atLevel' | 'attemptedAt' | 'contentDigest'
> & { readonly offsetMs: bigint | number }
type KeptObservation = Pick<Observation, 'id' | 'momentCount' | 'contentDigest'> & {
  readonly ratings: Prisma.JsonValue
}
type KeptIncident = Pick<Incident, 'id' | 'kind' | 'skill' | 'place' | 'contentDigest'>

/** What is kept already of all that some items name; what they add is noted here as it is judged. */
export interface Kept {
  readonly calls: KeptCall[]
  readonly attempts: Map<string, KeptAttempt>
  readonly observations: Map<string, KeptObservation>
  readonly incidents: Map<string, KeptIncident>
  /** Attempts whose mark "filmed" is kept. */
  readonly filmed: Set<string>
  /** The observation in force of this coach, by attempt. */
  readonly heads: Map<string, string>
  /** Numbers of calls that are taken: club, call and number. */
  readonly numbers: Set<string>
  /** Editions by hash: null when there is none of that name, 'draft' when it was never published. */
  readonly editions: ReadonlyMap<string, Curriculum | 'draft' | null>
}

export const numberIn = (club: string, call: string, number: number): string => `${club} ${call} ${number}`

/** Reads it, a query a table, after the divers' rows are locked. */
export async function readKept(
  { tx, scope, curriculum }: { readonly tx: Tx; readonly scope: Scope; readonly curriculum: Curriculum },
  items: readonly DeckItem[],
): Promise<Kept> {
  const ids = (kind: DeckItem['kind']) => items.filter((item) => item.kind === kind).map((item) => item.id)
  const called = items.flatMap((item) => (item.kind === 'attempt' && item.call ? [item.call.id] : []))
  const rated = items.flatMap((item) => (item.kind === 'observation' ? [item.attempt] : []))
  const named = items.flatMap((item) => (item.kind === 'incident' && item.attempt ? [item.attempt] : []))
  const attempts = await tx.attempt.findMany({
    where: { OR: [{ id: { in: [...ids('attempt'), ...rated, ...named] } }, { callId: { in: called } }] },
  })
  const calls = await tx.call.findMany({ where: { id: { in: [...ids('call'), ...called] } } })
  const observations = await tx.observation.findMany({ where: { id: { in: ids('observation') } } })
  const heads = await tx.observationHead.findMany({ where: { attemptId: { in: rated }, coachId: scope.account } })
  const marked = items.flatMap((item) => (item.kind === 'attempt' && item.filmed ? [item.id] : []))
  const filmed = marked.length > 0 ? await tx.filmedAttempt.findMany({ where: { attemptId: { in: marked } } }) : []
  const reported = ids('incident')
  const incidents = reported.length > 0 ? await tx.incident.findMany({ where: { id: { in: reported } } }) : []
  const byId = <Row extends { id: string }>(rows: readonly Row[]) => new Map(rows.map((row) => [row.id, row]))
  return {
    calls,
    attempts: byId(attempts),
    observations: byId(observations),
    incidents: byId(incidents),
    filmed: new Set(filmed.map(({ attemptId }) => attemptId)),
    heads: new Map(heads.map((head) => [head.attemptId, head.observationId])),
    numbers: new Set(
      attempts.flatMap(({ clubId, callId, callNumber }) =>
        callId && callNumber !== null ? [numberIn(clubId, callId, callNumber)] : [],
      ),
    ),
    editions: await readEditions(tx, scope, curriculum, items),
  }
}

async function readEditions(
  tx: Tx,
  scope: Scope,
  inForce: Curriculum,
  items: readonly DeckItem[],
): Promise<Kept['editions']> {
  const hashes = new Set(items.flatMap((item) => (item.kind === 'observation' ? [item.edition] : [])))
  const editions = new Map<string, Curriculum | 'draft' | null>()
  for (const hash of hashes) {
    const edition = hash === inForce.hash ? inForce : await findEdition(tx, scope, hash)
    editions.set(hash, edition ?? ((await isDraft(tx, hash)) ? 'draft' : null))
  }
  return editions
}

/** Rows that some items add, by table, in the order of the items. */
export interface Added {
  readonly words: Prisma.WordsCreateManyInput[]
  readonly calls: Prisma.CallCreateManyInput[]
  readonly attempts: (Prisma.AttemptCreateManyInput & AttemptRow)[]
  readonly observations: (Prisma.ObservationCreateManyInput & ObservationRow)[]
  readonly moments: Prisma.MomentCreateManyInput[]
  readonly filmed: Prisma.FilmedAttemptCreateManyInput[]
}

export const nothingAdded = (): Added => ({
  words: [],
  calls: [],
  attempts: [],
  observations: [],
  moments: [],
  filmed: [],
})

/** Writes them, what others refer to first. An observation that corrects another of the batch comes after it. */
export async function writeAdded(tx: Tx, added: Added): Promise<void> {
  if (added.words.length > 0) await tx.words.createMany({ data: added.words })
  if (added.calls.length > 0) await tx.call.createMany({ data: added.calls })
  if (added.attempts.length > 0) await tx.attempt.createMany({ data: added.attempts })
  if (added.observations.length > 0) await tx.observation.createMany({ data: added.observations })
  if (added.moments.length > 0) await tx.moment.createMany({ data: added.moments })
  if (added.filmed.length > 0) await tx.filmedAttempt.createMany({ data: added.filmed })
}
