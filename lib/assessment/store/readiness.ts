import type { Readiness } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import type { Tx } from '../../platform/db'
import type { Status } from '../readiness/finding'
import { type KnownReady, readySince } from '../readiness/ready-since'
import { type StandingRow, standingRow } from '../readiness/standing-row'
import { datesOf, nextStandingChange, type Standing } from '../readiness/target-standing'
import { listTargets } from '../readiness/targets'
import { readWaitsFor, writeWaitsFor } from '../readiness/waits-for'
import type { TargetKey } from '../record'
import { asOfInstant, dateOf, dayIn, dayOf } from '../time'
import { type DiverFile, listDiverFiles } from './records'

/** What is kept of a target; `computedAt` aside, a pure function of the record, the edition and the day. */
export type ReadinessRow = Omit<Readiness, 'computedAt'>

/** When a target was ready by a row that was kept, and the day on which that was worked out; another club has other boards. */
function knownBy(row: Readiness | undefined, { club, zone }: DiverFile): KnownReady | null {
  if (!row?.ready || !row.readySince || row.clubId !== club) return null
  return { since: dayOf(row.readySince), on: dayIn(row.computedAt.getTime(), zone) }
}

/**
 * The readiness rows of one diver, worked out from her record. Pure. `before` are the rows that were kept of her under the
 * same edition: whatever came in since had them worked out again, so that only the calendar can have changed their answer.
 */
export function readinessOf(
  curriculum: Curriculum,
  programme: string,
  file: DiverFile,
  at: number,
  before: readonly Readiness[] = [],
): ReadinessRow[] {
  const { record, zone } = file
  const date = asOfInstant(at, zone)
  const dates = datesOf(curriculum, record, date, zone)
  const changes = nextStandingChange(curriculum, record, date, zone)
  const validUntil = changes === null ? null : dateOf(changes)
  return listTargets(curriculum).map((target) => {
    const row = standingRow(dates, target)
    const known = knownBy(
      before.find((kept) => kept.target === target),
      file,
    )
    const since = row.ready ? readySince(curriculum, record, target, date, zone, known) : null
    return {
      ...row,
      diverId: file.id,
      programmeId: programme,
      clubId: file.club,
      readySince: since === null ? null : dateOf(since),
      waitsFor: row.waitsFor.map(writeWaitsFor),
      validUntil,
      editionHash: curriculum.hash,
    }
  })
}

/** A kept row as lists read it. */
export const toStandingRow = (row: ReadinessRow): StandingRow => ({
  target: row.target as TargetKey,
  status: row.status as Status,
  held: row.held as StandingRow['held'],
  ready: row.ready,
  readySince: row.readySince && dayOf(row.readySince),
  standing: row.standing as Standing,
  attemptsLeft: row.attemptsLeft,
  leftExact: row.leftExact,
  waitsFor: row.waitsFor.map(readWaitsFor),
})

/**
 * When readiness is worked out: with the change, so that the next page finds it; or when it is next read, for who writes a
 * season at once. Until then the diver has no rows.
 */
export type ReadinessWhen = 'now' | 'when read'

/**
 * Keeps the rows of some divers from their files as they are after a change, inside the transaction that changed them and
 * under their row locks.
 */
export async function keepReadiness(
  tx: Tx,
  scope: Scope,
  curriculum: Curriculum,
  files: readonly DiverFile[],
  when: ReadinessWhen = 'now',
): Promise<void> {
  if (files.length === 0) return
  const where = { diverId: { in: files.map((file) => file.id) } }
  const kept = when === 'now' ? await tx.readiness.findMany({ where: { ...where, editionHash: curriculum.hash } }) : []
  await tx.readiness.deleteMany({ where })
  if (when === 'when read') return
  const computedAt = new Date(scope.at)
  const data = files.flatMap((file) => {
    const before = kept.filter((row) => row.diverId === file.id)
    return readinessOf(curriculum, scope.programme, file, scope.at, before).map((row) => ({ ...row, computedAt }))
  })
  await tx.readiness.createMany({ data })
}

/** As `keepReadiness`, from the divers' records read again. */
export async function refreshReadiness(
  tx: Tx,
  scope: Scope,
  curriculum: Curriculum,
  divers: readonly string[],
): Promise<void> {
  if (divers.length > 0) await keepReadiness(tx, scope, curriculum, await listDiverFiles(tx, scope, divers))
}
