import type { Prisma } from '../../../generated/prisma/client'
import type { Tx } from '../../platform/db'
import { type Copied, type KeptMoment, withCopies } from '../moment-copies'

/** A moment of a diver with its copies. */
export type DiverCopied = Copied<KeptMoment & { readonly diver: string }>

/** The moments of some observations, and all views of their attempts: `where` says which observations. None whose link was erased. */
export async function listCopied(tx: Tx, where: Prisma.ObservationWhereInput): Promise<DiverCopied[]> {
  const views = await tx.observation.findMany({
    where,
    select: { id: true, attemptId: true, coachId: true, supersedesId: true },
  })
  const moments = await tx.moment.findMany({
    where: { observationId: { in: views.map(({ id }) => id) }, link: { not: null } },
    orderBy: { id: 'asc' },
  })
  const outcomes = await tx.filmedOutcome.findMany({
    where: { momentId: { in: moments.map(({ id }) => id) } },
    select: { momentId: true },
  })
  const linked = new Set(outcomes.map(({ momentId }) => momentId))
  return withCopies(
    views.map(({ id, attemptId, coachId, supersedesId }) => ({
      ...{ id, attempt: attemptId, coach: coachId, supersedes: supersedesId },
    })),
    moments.flatMap(({ id, diverId, observationId, link, startMs, endMs }) =>
      link === null
        ? []
        : [{ id, diver: diverId, observation: observationId, link, startMs, endMs, linked: linked.has(id) }],
    ),
  )
}

/**
 * A moment and its copies in the other views that its coach had of the attempt, oldest view first: what was marked, measured
 * or asked in one belongs to all. The moment alone where the account may not see whose it is, as one who looks blind.
 */
export async function listCopies(tx: Tx, moment: string): Promise<readonly string[]> {
  const row = await tx.moment.findFirst({ where: { id: moment }, select: { observationId: true } })
  const seen = row && (await tx.observation.findFirst({ where: { id: row.observationId } }))
  if (!seen) return [moment]
  const all = await listCopied(tx, { attemptId: seen.attemptId, coachId: seen.coachId })
  return all.find(({ id }) => id === moment)?.copies ?? [moment]
}
