import type { Prisma, Readiness } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import type { Tx } from '../../platform/db'
import { evaluationOf } from '../readiness/evaluation'
import { nextChange, readySince } from '../readiness/ready-since'
import { listTargets, readTarget } from '../readiness/targets'
import { asOfInstant, type EpochDay } from '../time'
import { type DiverFile, listDiverFiles } from './records'

/** What is kept of a target; `computedAt` aside, a pure function of the record, the edition and the day. */
export type ReadinessRow = Omit<Readiness, 'computedAt'>

const dateOf = (day: EpochDay | null): Date | null => (day === null ? null : new Date(day * 86_400_000))

/**
 * The readiness rows of one diver, worked out from her record. Pure. `before` are rows that still hold: what comes in now
 * changes no earlier day, so that a target which was ready then and is ready now has been ready all along.
 */
export function readinessOf(
  curriculum: Curriculum,
  programme: string,
  file: DiverFile,
  at: number,
  before: readonly Readiness[] = [],
): ReadinessRow[] {
  const date = asOfInstant(at, file.zone)
  const evaluation = evaluationOf(curriculum, file.record, date)
  const validUntil = dateOf(nextChange(curriculum, file.record, date, file.zone))
  return listTargets(curriculum).map((target) => {
    const found = readTarget(evaluation, target)
    return {
      diverId: file.id,
      target,
      programmeId: programme,
      clubId: file.club,
      status: found.finding.status,
      held: found.held,
      ready: found.ready,
      readySince: found.ready
        ? (before.find((row) => row.target === target && row.ready)?.readySince ??
          dateOf(readySince(curriculum, file.record, target, date, file.zone)))
        : null,
      validUntil,
      editionHash: curriculum.hash,
    }
  })
}

/** Works the rows of some divers out afresh, inside the transaction that changed them and under their row locks. */
export async function refreshReadiness(
  tx: Tx,
  scope: Scope,
  curriculum: Curriculum,
  divers: readonly string[],
): Promise<void> {
  if (divers.length === 0) return
  const files = await listDiverFiles(tx, scope, divers)
  const computedAt = new Date(scope.at)
  const kept = await tx.readiness.findMany({
    where: {
      diverId: { in: [...divers] },
      editionHash: curriculum.hash,
      OR: [{ validUntil: null }, { validUntil: { gt: computedAt } }],
    },
  })
  const rows: Prisma.ReadinessCreateManyInput[] = files.flatMap((file) => {
    const before = kept.filter((row) => row.diverId === file.id)
    return readinessOf(curriculum, scope.programme, file, scope.at, before).map((row) => ({ ...row, computedAt }))
  })
  await tx.readiness.deleteMany({ where: { diverId: { in: files.map((file) => file.id) } } })
  await tx.readiness.createMany({ data: rows })
}
