import type { Attempt, Call, Observation } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import type { Tx } from '../../platform/db'
import type { AttemptItem, CallItem, FilmedItem, MomentItem, SnapshotCall, SnapshotObservation } from '../deck/contract'

const recentDays = 7
const callHours = 16

const since = (scope: Scope, milliseconds: number): Date => new Date(scope.at - milliseconds)

/** What the coach observed in the last week, newest first and in force, so that it can be corrected. */
export async function listRecent(tx: Tx, scope: Scope): Promise<SnapshotObservation[]> {
  const rows = await tx.observation.findMany({
    where: { coachId: scope.account, receivedAt: { gt: since(scope, recentDays * 86_400_000) } },
    orderBy: { receivedAt: 'desc' },
    take: 200,
  })
  const superseded = new Set(rows.map((row) => row.supersedesId))
  const inForce = rows.filter((row) => !superseded.has(row.id)).slice(0, 60)
  const ids = inForce.map((row) => row.id)
  const attempts = await tx.attempt.findMany({ where: { id: { in: inForce.map((row) => row.attemptId) } } })
  const notes = await tx.words.findMany({ where: { id: { in: inForce.flatMap((row) => row.noteId ?? []) } } })
  const moments = await tx.moment.findMany({ where: { observationId: { in: ids } }, orderBy: { startMs: 'asc' } })
  const filmed = await listOpenFilmed(tx, attempts)
  return inForce.flatMap((row) => {
    const attempt = attempts.find((candidate) => candidate.id === row.attemptId)
    if (!attempt) return []
    const own = moments.filter((moment) => moment.observationId === row.id)
    const note = notes.find((words) => words.id === row.noteId)?.text ?? null
    return [
      {
        attempt: toAttemptItem(attempt, filmed.get(attempt.id)),
        observation: toObservationItem(row, note, own.flatMap(toMomentItem)),
      },
    ]
  })
}

/** The coach's calls of today, with the numbers in them that were kept: the deck goes on with them after a reload. */
export async function listOpenCalls(tx: Tx, scope: Scope): Promise<SnapshotCall[]> {
  const calls = await tx.call.findMany({
    where: { coachId: scope.account, receivedAt: { gt: since(scope, callHours * 3_600_000) } },
    orderBy: { receivedAt: 'desc' },
  })
  const kept = await tx.attempt.findMany({
    where: { callId: { in: calls.map((call) => call.id) } },
    select: { callId: true, callNumber: true },
  })
  return calls
    .map((call) => ({
      call: toCallItem(call),
      kept: kept.flatMap((row) => (row.callId === call.id && row.callNumber !== null ? [row.callNumber] : [])),
    }))
    .filter(({ call, kept }) => kept.length < call.count)
}

const toCallItem = (row: Call): CallItem => ({
  kind: 'call',
  id: row.id,
  diver: row.diverId,
  skill: row.skill,
  place: row.place as Place,
  atLevel: row.atLevel,
  count: row.count,
  calledAt: row.calledAt.getTime(),
  device: row.deviceId,
})

/** The marks of some attempts that were filmed and still wait for their clip. */
async function listOpenFilmed(tx: Tx, attempts: readonly Attempt[]): Promise<ReadonlyMap<string, FilmedItem>> {
  const where = { attemptId: { in: attempts.map(({ id }) => id) } }
  const settled = new Set((await tx.filmedOutcome.findMany({ where })).map(({ attemptId }) => attemptId))
  const rows = (await tx.filmedAttempt.findMany({ where })).filter(({ attemptId }) => !settled.has(attemptId))
  return new Map(rows.map(({ attemptId, clip, filmedAt }) => [attemptId, { clip, at: filmedAt.getTime() }]))
}

const toAttemptItem = (row: Attempt, filmed: FilmedItem | undefined): AttemptItem => ({
  kind: 'attempt',
  id: row.id,
  diver: row.diverId,
  skill: row.skill,
  place: row.place as Place,
  atLevel: row.atLevel,
  call: row.callId === null || row.callNumber === null ? null : { id: row.callId, number: row.callNumber },
  attemptedAt: row.attemptedAt.getTime(),
  setting: row.setting as AttemptItem['setting'],
  cued: row.cued,
  device: row.deviceId,
  ...(filmed ? { filmed } : {}),
})

const toObservationItem = (row: Observation, note: string | null, moments: MomentItem[]) => ({
  kind: 'observation' as const,
  id: row.id,
  attempt: row.attemptId,
  edition: row.editionHash,
  observedOn: row.observedOn as 'deck' | 'video',
  observedAt: row.observedAt.getTime(),
  ratings: row.ratings as Record<string, Rating>,
  restAsExpected: row.restAsExpected,
  faults: row.faults,
  note,
  moments,
  supersedes: null,
})

const toMomentItem = (row: { id: string; link: string | null; startMs: number; endMs: number | null }): MomentItem[] =>
  row.link === null
    ? []
    : [{ id: row.id, link: row.link, start: row.startMs / 1000, end: row.endMs === null ? null : row.endMs / 1000 }]
