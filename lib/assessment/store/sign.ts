import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { splitPairKey } from '../../curriculum/edition/curriculum'
import { asAccount, type Tx } from '../../platform/db'
import type { Cited } from '../ledger/event'
import type { Outcome } from '../outcome'
import { judgeSignOff, type SignRequest } from '../sign'
import { dayIn } from '../time'
import { isWithinScope } from './coach-scope'
import { lockDiver, notFound } from './desk'
import { appendLedger } from './ledger'
import { keepReadiness, type ReadinessWhen } from './readiness'
import { keepWords } from './words'

export interface SignSkill extends SignRequest {
  readonly diver: string
}

/** The observations in force of the cited attempts, with their digests: what was signed on cannot be swapped later. */
async function citedOf(tx: Tx, evidence: readonly string[]): Promise<Cited[]> {
  const heads = await tx.observationHead.findMany({ where: { attemptId: { in: [...evidence] } } })
  const rows = await tx.observation.findMany({
    where: { id: { in: heads.map((head) => head.observationId) } },
    select: { id: true, attemptId: true, digest: true },
    orderBy: { id: 'asc' },
  })
  return rows.map((row) => ({ attempt: row.attemptId, observation: row.id, digest: row.digest }))
}

/** Signs a skill off for a diver, judged on her record as it is inside the transaction. */
export function signSkill(scope: Scope, request: SignSkill, when: ReadinessWhen = 'now'): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    if (!now) return notFound
    const { file, curriculum, evaluation, words } = now
    const pair = curriculum.pairs.get(request.pair)
    const posts = await tx.membership.findMany({ where: { accountId: scope.account, clubId: file.club, to: null } })
    const role = posts.some((post) => post.role === 'head') ? 'head' : 'assistant'
    if (posts.length === 0) return notFound
    const scopes = await tx.coachScope.findMany({ where: { accountId: scope.account } })
    const withinScope = pair !== undefined && isWithinScope(scopes, file.club, pair, scope.at)
    const judged = judgeSignOff(evaluation, request, { role, withinScope }, words)
    if (!judged.ok) return judged
    const about = { club: file.club, diver: file.id, writtenBy: scope.account }
    const reason = request.reason ? await keepWords(tx, about, request.reason) : null
    const id = uuidv7({ msecs: scope.at })
    const { skill, place } = splitPairKey(request.pair)
    const { by: method, evidence } = judged
    const { level, waiver } = request
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'signed off',
      signOff: id,
      diver: file.id,
      club: file.club,
      skill,
      place,
      level,
      edition: curriculum.hash,
      by: scope.account,
      method,
      waiver,
      reason: reason?.commitment ?? null,
      evidence: await citedOf(tx, evidence),
    })
    await tx.signOff.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        skill,
        place,
        level,
        editionHash: curriculum.hash,
        coachId: scope.account,
        signedAt: new Date(scope.at),
        method,
        ...(waiver ? { waiver: { ...waiver } } : {}),
        reasonId: reason?.id ?? null,
        evidence: [...evidence],
        ledgerSeq,
      },
    })
    const at = { signedAt: scope.at, receivedAt: scope.at, day: dayIn(scope.at, file.zone) }
    const signOff = { id, pair: request.pair, level, coach: scope.account, ...at, by: method, waiver, evidence }
    const signOffs = [...file.record.signOffs, { ...signOff, revokedAt: null }]
    await keepReadiness(tx, scope, curriculum, [{ ...file, record: { ...file.record, signOffs } }], when)
    return { ok: true, id }
  })
}
