import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import type { AttemptFact } from '../record'
import { judgeAcceptance, judgeAttemptRelease, type ReleaseJudgement } from '../release'
import { type DiverNow, lockDiver } from './desk'
import { listHeadCoaches } from './head-coaches'
import { refreshReadiness } from './readiness'
import { keepWords } from './words'

const notFound = refuse(
  'not found',
  'No attempt of your divers is found there. The diver may have moved to another club.',
)
const notHead = refuse(
  'not the head coach',
  'Only the diver’s head coach releases attempts and accepts raised ratings.',
)

interface Subject {
  readonly kind: 'attempt' | 'rating'
  /** Id of the attempt, or of the observation that raised a rating. */
  readonly id: string
  readonly diver: string
  readonly reason: string
  readonly judge: (now: DiverNow, heads: readonly string[]) => ReleaseJudgement | null
}

/** Judged on the record as it is under the diver's lock, then appended. */
async function release(tx: Tx, scope: Scope, subject: Subject): Promise<Outcome> {
  const now = await lockDiver(tx, scope, subject.diver)
  if (!now) return notFound
  const { file, curriculum } = now
  const heads = await listHeadCoaches(tx, file.club)
  if (!heads.includes(scope.account)) return notHead
  const judged = subject.judge(now, heads)
  if (!judged) return notFound
  if (!judged.ok) return judged
  const about = { club: file.club, diver: file.id, writtenBy: scope.account }
  const reason = await keepWords(tx, about, subject.reason.trim())
  const id = uuidv7({ msecs: scope.at })
  await tx.release.create({
    data: {
      id,
      clubId: file.club,
      diverId: file.id,
      kind: subject.kind,
      subjectId: subject.id,
      by: scope.account,
      at: new Date(scope.at),
      reasonId: reason.id,
      ledgerSeq: null,
    },
  })
  await refreshReadiness(tx, scope, curriculum, [file.id])
  return { ok: true, id }
}

const attemptIn = ({ evaluation }: DiverNow, id: string): AttemptFact | undefined =>
  evaluation.record.attempts.find((attempt) => attempt.id === id)

/** Releases an attempt that was dived while its skill was closed: from now on it counts like any other. */
export function releaseAttempt(scope: Scope, request: { attempt: string; reason: string }): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.attempt.findFirst({ where: { id: request.attempt }, select: { diverId: true } })
    if (!row) return notFound
    return release(tx, scope, {
      kind: 'attempt',
      id: request.attempt,
      diver: row.diverId,
      reason: request.reason,
      judge: (now) => {
        const attempt = attemptIn(now, request.attempt)
        return attempt ? judgeAttemptRelease(attempt, request.reason) : null
      },
    })
  })
}

/** Accepts the critical ratings that a correction raised or took back: the lower ones stop counting. */
export function acceptRating(scope: Scope, request: { observation: string; reason: string }): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const where = { where: { id: request.observation }, select: { diverId: true, attemptId: true } }
    const row = await tx.observation.findFirst(where)
    if (!row) return notFound
    return release(tx, scope, {
      kind: 'rating',
      id: request.observation,
      diver: row.diverId,
      reason: request.reason,
      judge: (now, heads) => {
        const attempt = attemptIn(now, row.attemptId)
        const pair = attempt && now.curriculum.pairs.get(attempt.pair)
        if (!attempt || !pair) return null
        const acceptor = { account: scope.account, otherHead: heads.some((head) => head !== scope.account) }
        return judgeAcceptance(pair, attempt, request.observation, acceptor, request.reason)
      },
    })
  })
}
