import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import { coachesUnder, type DecisionRequest, judgeDecision } from '../decide'
import { digestOf } from '../ledger/write-event'
import type { Outcome } from '../outcome'
import { dayIn } from '../time'
import { lockDiver } from './desk'
import { appendLedger } from './ledger'
import { isHeadOf, notFound, refuse } from './post'
import { keepReadiness, type ReadinessWhen } from './readiness'
import { keepWords } from './words'

export interface DecideTarget extends DecisionRequest {
  readonly diver: string
}

const notHead = refuse('not the head coach', 'Only the diver’s head coach decides on levels and board moves.')

/**
 * Records a head coach's decision, judged on the diver's record as it is inside the transaction. The diver's row is locked:
 * of two head coaches at once the second decides on what the first left, and is told.
 */
export function decideTarget(scope: Scope, request: DecideTarget, when: ReadinessWhen = 'now'): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    if (!now) return notFound
    const { file, curriculum, evaluation, words } = now
    if (!(await isHeadOf(tx, scope, file.club))) return notHead
    const judged = judgeDecision(evaluation, request, scope.account, words)
    if (!judged.ok) return judged
    const about = { club: file.club, diver: file.id, writtenBy: scope.account }
    const reason = request.reason?.trim() ? await keepWords(tx, about, request.reason.trim()) : null
    const alone = coachesUnder(evaluation, judged.found).every((coach) => coach === scope.account)
    const onlyCoach = alone && request.onlyCoach?.trim() ? await keepWords(tx, about, request.onlyCoach.trim()) : null
    const id = uuidv7({ msecs: scope.at })
    const common = {
      target: judged.found.target,
      outcome: request.outcome,
      by: scope.account,
      waivesAge: judged.waivesAge,
      diverWants: request.target.startsWith('move:') ? request.diverWants : null,
    }
    const findingDigest = digestOf(judged.found)
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'decided',
      decision: id,
      diver: file.id,
      club: file.club,
      ...common,
      edition: curriculum.hash,
      finding: findingDigest,
      wantsMoreOf: judged.wantsMoreOf,
      reason: reason?.commitment ?? null,
      onlyCoach: onlyCoach?.commitment ?? null,
      evidence: judged.found.finding.evidence,
    })
    await tx.decision.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        ...common,
        decidedAt: new Date(scope.at),
        editionHash: curriculum.hash,
        findingDigest,
        wantsMoreOf: [...judged.wantsMoreOf],
        reasonId: reason?.id ?? null,
        onlyCoachId: onlyCoach?.id ?? null,
        ledgerSeq,
      },
    })
    const at = { decidedAt: scope.at, receivedAt: scope.at, day: dayIn(scope.at, file.zone) }
    const { target, outcome, by, waivesAge } = common
    const decision = { id, target, outcome, by, waivesAge, ...at, wantsMoreOf: judged.wantsMoreOf }
    const decisions = [...file.record.decisions, decision]
    await keepReadiness(tx, scope, curriculum, [{ ...file, record: { ...file.record, decisions } }], when)
    return { ok: true, id }
  })
}
