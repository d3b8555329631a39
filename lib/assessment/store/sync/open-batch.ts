import type { Scope } from '../../../access/scope'
import { getEditionInForce } from '../../../curriculum/store/editions'
import type { Tx } from '../../../platform/db'
import type { DeckItem } from '../../deck/contract'
import { pausedAsAt } from '../../incident'
import { type Evaluation, evaluationOf } from '../../readiness/evaluation'
import type { IncidentFact } from '../../record'
import { listConsents } from '../consents'
import { lockDivers } from '../lock'
import { takeLooks } from '../looks'
import { type DiverRows, listDiverRows, toFile } from '../records'
import type { SyncBatch } from './context'

/** A batch that is open, with the rows about its divers as they were before it. */
export interface OpenBatch extends SyncBatch {
  readonly before: readonly DiverRows[]
  /** Incidents that the batch brought. */
  readonly incidents: readonly { readonly diver: string; readonly fact: IncidentFact }[]
}

/** Locks the rows of the divers that a batch is about, and reads what it is judged on, once. */
export async function openBatch(tx: Tx, scope: Scope, sentAt: number, items: readonly DeckItem[]): Promise<OpenBatch> {
  const attempts = items.flatMap((item) => (item.kind === 'observation' ? [item.attempt] : []))
  const rated = await tx.attempt.findMany({ where: { id: { in: attempts } }, select: { id: true, diverId: true } })
  const named = items.flatMap((item) => (item.kind === 'observation' ? [] : [item.diver]))
  const divers = [...new Set([...named, ...rated.map((row) => row.diverId)])]
  await lockDivers(tx, divers)
  const curriculum = await getEditionInForce(tx, scope)
  const before = await listDiverRows(tx, scope, divers)
  const here = new Set(before.map(({ diver }) => diver.id))
  const elsewhere = rated.filter((row) => !here.has(row.diverId)).map((row) => row.id)
  const files = new Map(before.map((rows) => [rows.diver.id, toFile(rows)]))
  const incidents: { readonly diver: string; readonly fact: IncidentFact }[] = []
  const evaluations = new Map<string, Evaluation>()
  return {
    tx,
    scope,
    receivedAt: scope.at,
    offset: scope.at - sentAt,
    curriculum,
    divers: new Map(before.map(({ diver }) => [diver.id, diver.club])),
    coachScopes: await tx.coachScope.findMany({ where: { accountId: scope.account }, orderBy: { setAt: 'asc' } }),
    zoneOf: before[0]?.rows.zoneOf ?? (() => scope.zone),
    consentsOf: await listConsents(tx, divers),
    looks: await takeLooks(tx, elsewhere),
    before,
    incidents,
    noteIncident: (diver, fact) => incidents.push({ diver, fact }),
    evaluationOn: (diver, day, at) => {
      const file = files.get(diver)
      if (!file) return null
      const fresh = incidents.flatMap((one) => (one.diver === diver ? [one.fact] : []))
      const record = pausedAsAt({ ...file.record, incidents: [...file.record.incidents, ...fresh] }, at)
      const key = [diver, day, ...record.incidents.map(({ id }) => id)].join(' ')
      const found = evaluations.get(key)
      if (found) return found
      const evaluation = evaluationOf(curriculum, record, { day, instant: scope.at })
      evaluations.set(key, evaluation)
      return evaluation
    },
    refused: new Map(),
  }
}
