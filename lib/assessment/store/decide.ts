import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { coachesUnder, type DecisionRequest, judgeDecision } from '../decide'
import type { SaidQuestion } from '../ledger/event'
import { digestOf } from '../ledger/write-event'
import { type Outcome, refuse } from '../outcome'
import { type DecidedQuestion, standingQuestions } from '../question'
import { dayIn } from '../time'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'
import { appendLedger } from './ledger'
import { type DiverQuestions, readQuestions } from './questions'
import { keepReadiness, type ReadinessWhen } from './readiness'
import { type Kept, keepWords } from './words'

export interface DecideTarget extends DecisionRequest {
  readonly diver: string
}

const notHead = refuse('not the head coach', 'Only the diver’s head coach decides on levels and board moves.')

interface Said extends DecidedQuestion {
  /** Why it is left open, in the erasable table. */
  readonly kept: Kept | null
}

async function keepReasons(
  tx: Tx,
  about: Parameters<typeof keepWords>[1],
  questions: readonly DecidedQuestion[],
): Promise<Said[]> {
  const said: Said[] = []
  for (const one of questions) said.push({ ...one, kept: one.reason ? await keepWords(tx, about, one.reason) : null })
  return said
}

/** As the ledger has it: ids, and commitments in place of words. */
function toSaid({ question, how, kept }: Said, { commitments }: DiverQuestions): SaidQuestion {
  const { asked, answers, correction } = question
  return {
    question: asked.id,
    observation: asked.observation,
    by: asked.by,
    how,
    asked: commitments.get(asked.id) ?? '',
    answers: answers.map(({ id }) => commitments.get(id) ?? ''),
    correction,
    reason: kept?.commitment ?? null,
  }
}

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
    const questions = (await readQuestions(tx, [file.id]))(file.id)
    const standing = standingQuestions(questions, file.record.attempts)
    const judged = judgeDecision({ evaluation, decider: scope.account, words, standing }, request)
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
    const said = await keepReasons(tx, about, judged.questions)
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
      questions: said.map((one) => toSaid(one, questions)),
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
    await tx.decisionQuestion.createMany({
      data: said.map(({ question, how, kept }) => ({
        ...{ decisionId: id, questionId: question.asked.id, clubId: file.club, diverId: file.id },
        ...{ how, by: scope.account, reasonId: kept?.id ?? null },
      })),
    })
    const at = { decidedAt: scope.at, receivedAt: scope.at, day: dayIn(scope.at, file.zone) }
    const { target, outcome, by, waivesAge } = common
    const decision = { id, target, outcome, by, waivesAge, ...at, wantsMoreOf: judged.wantsMoreOf }
    const decisions = [...file.record.decisions, decision]
    await keepReadiness(tx, scope, curriculum, [{ ...file, record: { ...file.record, decisions } }], when)
    return { ok: true, id }
  })
}
