import { v7 as uuidv7 } from 'uuid'
import type { Prisma } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import { splitPairKey } from '../../curriculum/edition/curriculum'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import type { Refused } from '../outcome'
import { evaluationOf } from '../readiness/evaluation'
import { type Recognisable, recognisedKey, refuseRecognition } from '../recognise'
import { asOfInstant } from '../time'
import { appendLedger } from './ledger'
import { lockDivers } from './lock'
import { keepReadiness, type ReadinessWhen } from './readiness'
import { type DiverFile, listDiverFiles } from './records'
import { keepWords } from './words'

export interface Recognitions {
  readonly ticks: readonly { readonly diver: string; readonly what: Recognisable }[]
  readonly reason: string
}

export type Recognised =
  | { readonly ok: true; readonly count: number }
  /** Nothing was kept; each refusal is about one diver, or about the whole. */
  | { readonly ok: false; readonly refusals: readonly (Refused & { readonly diver: string | null })[] }

const refuse = (code: string, message: string, field?: string): Recognised => ({
  ok: false,
  refusals: [{ diver: null, code, message, ...(field ? { field } : {}) }],
})

function columns(what: Recognisable) {
  if (what.kind === 'level') return { kind: what.kind, level: what.level }
  if (what.kind === 'boardMove') return { kind: what.kind, family: what.family, place: what.to }
  return { kind: what.kind, ...splitPairKey(what.pair), level: what.level }
}

/** The recognitions of one diver: her copy of the reason, and one ledger event for each. */
async function keepFor(
  tx: Tx,
  scope: Scope,
  file: DiverFile,
  whats: readonly Recognisable[],
  reason: string,
): Promise<Prisma.RecognitionCreateManyInput[]> {
  const about = { club: file.club, diver: file.id, writtenBy: scope.account }
  const words = await keepWords(tx, about, reason)
  const rows: Prisma.RecognitionCreateManyInput[] = []
  for (const what of whats) {
    const id = uuidv7({ msecs: scope.at })
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'recognised',
      recognition: id,
      diver: file.id,
      club: file.club,
      what: recognisedKey(what),
      by: scope.account,
      reason: words.commitment,
    })
    rows.push({
      id,
      clubId: file.club,
      diverId: file.id,
      ...columns(what),
      by: scope.account,
      recognisedAt: new Date(scope.at),
      reasonId: words.id,
      ledgerSeq,
    })
  }
  return rows
}

/**
 * Recognises what divers held before, all or nothing, judged on their records as they are inside the transaction. For the
 * head coach of every diver named; one reason, kept for each diver by herself so that it can be erased with her.
 */
export function recogniseAll(
  scope: Scope,
  { ticks, reason }: Recognitions,
  when: ReadinessWhen = 'now',
): Promise<Recognised> {
  return asAccount(
    scope.account,
    async (tx) => {
      if (ticks.length === 0) return refuse('nothing', 'Tick what is recognised, at least one thing for one diver.')
      if (!reason.trim()) return refuse('no reason', 'Say in writing on what the recognition rests.', 'reason')
      const ids = [...new Set(ticks.map(({ diver }) => diver))]
      await lockDivers(tx, ids)
      const files = await listDiverFiles(tx, scope, ids)
      const headed = await tx.membership.findMany({ where: { accountId: scope.account, role: 'head', to: null } })
      if (files.length < ids.length || files.some((file) => !headed.some(({ clubId }) => clubId === file.club)))
        return refuse(
          'not found',
          'One of the divers is of no club that you head. She may have moved: load the page afresh.',
        )
      const curriculum = await getEditionInForce(tx, scope)
      const whatsOf = (file: DiverFile) => [
        ...new Map(
          ticks.filter(({ diver }) => diver === file.id).map(({ what }) => [recognisedKey(what), what]),
        ).values(),
      ]
      const refusals = files.flatMap((file) => {
        const date = asOfInstant(scope.at, file.zone)
        const evaluation = evaluationOf(curriculum, file.record, date)
        const words = { curriculum, today: date.day, diver: file.givenName }
        return whatsOf(file).flatMap((what) => {
          const refusal = refuseRecognition(evaluation, what, words)
          return refusal ? [{ ...refusal, diver: file.id, message: `${file.givenName}: ${refusal.message}` }] : []
        })
      })
      if (refusals.length > 0) return { ok: false, refusals }
      const rows: Prisma.RecognitionCreateManyInput[] = []
      for (const file of files) rows.push(...(await keepFor(tx, scope, file, whatsOf(file), reason.trim())))
      await tx.recognition.createMany({ data: rows })
      await keepReadiness(tx, scope, curriculum, await listDiverFiles(tx, scope, ids), when)
      return { ok: true, count: rows.length }
    },
    { timeout: 60_000 },
  )
}

export interface RecognitionRow {
  readonly diver: string
  readonly by: string
  readonly at: number
  /** Null when the words were erased. */
  readonly reason: string | null
  readonly revoked: { readonly by: string; readonly at: number; readonly reason: string | null } | null
}

/** A recognition with its words and what became of it, or null: outside what the account sees it does not exist. */
export function findRecognition(scope: Scope, id: string): Promise<RecognitionRow | null> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.recognition.findUnique({ where: { id } })
    if (!row) return null
    const revocation = await tx.revocation.findUnique({ where: { subjectId: id } })
    const ids = [row.reasonId, ...(revocation ? [revocation.reasonId] : [])]
    const texts = new Map((await tx.words.findMany({ where: { id: { in: ids } } })).map((one) => [one.id, one.text]))
    return {
      diver: row.diverId,
      by: row.by,
      at: row.recognisedAt.getTime(),
      reason: texts.get(row.reasonId) ?? null,
      revoked: revocation && {
        by: revocation.by,
        at: revocation.at.getTime(),
        reason: texts.get(revocation.reasonId) ?? null,
      },
    }
  })
}
