import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { type CheckKind, isUnreachable, type MomentCheck, verdictOf } from '../moment-check'
import { type Outcome, refuse } from '../outcome'
import { type DiverHere, listDivers } from './divers-here'
import { isHeadOf } from './head-coaches'
import { lockDivers } from './lock'
import { type DiverQuestions, readQuestions } from './questions'
import { keepWords } from './words'

/** What a head coach makes of a moment; `words` are those of a question. */
export interface CheckRequest {
  readonly moment: string
  readonly kind: CheckKind
  readonly words: string
  /** Where whoever writes it makes its id: the demo, so that it is the same everywhere. */
  readonly id?: string
}

const notFound = refuse(
  'not found',
  'No moment of your divers is found there. The consent to video may have been withdrawn, or the diver has moved to another club.',
)

/** The diver, held until the end: a question and a decision on her come one after the other. Null outside the scope. */
async function holdDiver(tx: Tx, scope: Scope, diver: string): Promise<DiverHere | null> {
  await lockDivers(tx, [diver])
  return (await listDivers(tx, scope, [diver]))[0] ?? null
}

/** The check that says the same already: nothing is written twice, whatever is pressed twice. */
function saidBefore({ checks }: DiverQuestions, { moment, kind }: CheckRequest, by: string): MomentCheck | null {
  if (kind === 'not reachable')
    return isUnreachable(checks, moment) ? (checks.find((one) => one.moment === moment) ?? null) : null
  const standing = verdictOf(checks, moment, by)
  return kind === 'accepted' && standing?.kind === 'accepted' && !isUnreachable(checks, moment) ? standing : null
}

interface Subject {
  readonly diver: string
  readonly observation: string
  readonly attempt: string
}

/** Where a moment belongs; of one that is hidden, where an earlier check of it says. */
async function findSubject(tx: Tx, { moment, kind }: CheckRequest): Promise<Subject | null> {
  if (kind === 'withdrawn') {
    const check = await tx.momentCheck.findFirst({ where: { momentId: moment, kind: 'questioned' } })
    return check && { diver: check.diverId, observation: check.observationId, attempt: check.attemptId }
  }
  const row = await tx.moment.findFirst({ where: { id: moment } })
  const seen = row && (await tx.observation.findFirst({ where: { id: row.observationId, diverId: row.diverId } }))
  return seen && { diver: seen.diverId, observation: seen.id, attempt: seen.attemptId }
}

/**
 * Keeps what a head coach makes of a moment of her diver. It changes no rating and no readiness; a question is there for the
 * coach who rated, and for whoever decides on what rests on it.
 */
export function checkMoment(scope: Scope, request: CheckRequest): Promise<Outcome> {
  const { moment, kind } = request
  return asAccount(scope.account, async (tx) => {
    const subject = await findSubject(tx, request)
    const diver = subject && (await holdDiver(tx, scope, subject.diver))
    if (!subject || !diver) return notFound
    if (!(await isHeadOf(tx, scope, diver.club)))
      return refuse('not the head coach', 'Only the diver’s head coach goes through the evidence.')
    const asked = request.words.trim()
    if (kind === 'questioned' && asked === '')
      return refuse('no words', 'Say what you see otherwise: the coach who rated it answers to that.', 'words')
    const before = (await readQuestions(tx, [diver.id]))(diver.id)
    const same = saidBefore(before, request, scope.account)
    if (same) return { ok: true, id: same.id }
    if (kind === 'withdrawn' && verdictOf(before.checks, moment, scope.account)?.kind !== 'questioned')
      return refuse('not asked', 'No question of yours stands there: it was taken back or accepted before.')
    const about = { club: diver.club, diver: diver.id, writtenBy: scope.account }
    const words = kind === 'questioned' ? await keepWords(tx, about, asked) : null
    const id = request.id ?? uuidv7({ msecs: scope.at })
    await tx.momentCheck.create({
      data: {
        id,
        clubId: diver.club,
        diverId: diver.id,
        momentId: moment,
        observationId: subject.observation,
        attemptId: subject.attempt,
        kind,
        by: scope.account,
        at: new Date(scope.at),
        wordsId: words?.id ?? null,
      },
    })
    return { ok: true, id }
  })
}

const noQuestion = refuse(
  'not found',
  'No question on a moment of yours is found there. The diver may have moved to another club.',
)

/** The coach who rated a moment answers a question about it, in words; the question stands until it is taken back or decided on. */
export function answerQuestion(scope: Scope, request: { question: string; words: string }): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const asked = await tx.momentCheck.findFirst({ where: { id: request.question, kind: 'questioned' } })
    const diver = asked && (await holdDiver(tx, scope, asked.diverId))
    if (!asked || !diver) return noQuestion
    const seen = await tx.observation.findFirst({ where: { id: asked.observationId, coachId: scope.account } })
    if (!seen) return refuse('not the coach', 'Only the coach who rated the moment answers the question.')
    const words = request.words.trim()
    if (words === '')
      return refuse('no words', 'Say what you saw: the head coach reads it before she decides.', 'words')
    const { checks } = (await readQuestions(tx, [diver.id]))(diver.id)
    if (verdictOf(checks, asked.momentId, asked.by)?.id !== asked.id)
      return refuse('not asked', 'The question was taken back meanwhile. Nothing is left to answer.')
    const kept = await keepWords(tx, { club: diver.club, diver: diver.id, writtenBy: scope.account }, words)
    const id = uuidv7({ msecs: scope.at })
    const about = { clubId: diver.club, diverId: diver.id, questionId: asked.id }
    await tx.questionAnswer.create({
      data: { id, ...about, by: scope.account, at: new Date(scope.at), wordsId: kept.id },
    })
    return { ok: true, id }
  })
}
