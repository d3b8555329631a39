import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { type CheckKind, isUnreachable, type MomentCheck, verdictOf } from '../moment-check'
import { type Outcome, refuse } from '../outcome'
import { listCopies } from './copies'
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

/** The check that says the same of a moment already: nothing is written twice, whatever is pressed twice. */
function saidBefore({ checks }: DiverQuestions, moment: string, kind: CheckKind, by: string): MomentCheck | null {
  if (kind === 'not reachable')
    return isUnreachable(checks, moment) ? (checks.find((one) => one.moment === moment) ?? null) : null
  const standing = verdictOf(checks, moment, by)
  return kind === 'accepted' && standing?.kind === 'accepted' && !isUnreachable(checks, moment) ? standing : null
}

interface Subject {
  readonly diver: string
  readonly moment: string
  readonly observation: string
  readonly attempt: string
}

interface AskedRow {
  readonly momentId: string
  readonly diverId: string
  readonly observationId: string
  readonly attemptId: string
}

const subjectOf = ({ momentId, diverId, observationId, attemptId }: AskedRow): Subject => ({
  ...{ diver: diverId, moment: momentId, observation: observationId, attempt: attemptId },
})

/** Where a moment belongs; of one that is hidden, where an earlier check of it says. */
async function findSubject(tx: Tx, scope: Scope, { moment, kind }: CheckRequest): Promise<Subject | null> {
  if (kind === 'withdrawn') {
    const asked = { momentId: { in: [...(await listCopies(tx, moment))] }, kind: 'questioned' }
    const newest = { orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }] }
    const check =
      (await tx.momentCheck.findFirst({ where: { ...asked, by: scope.account }, ...newest })) ??
      (await tx.momentCheck.findFirst({ where: asked }))
    return check && subjectOf(check)
  }
  const row = await tx.moment.findFirst({ where: { id: moment } })
  const seen = row && (await tx.observation.findFirst({ where: { id: row.observationId, diverId: row.diverId } }))
  return seen && { diver: seen.diverId, moment, observation: seen.id, attempt: seen.attemptId }
}

/**
 * What is said of a moment takes back what the same head coach asked about an earlier copy of it: by a row of its own, so that it
 * holds also while the film is hidden and nobody can tell that the two are one.
 */
async function listAskedBefore(tx: Tx, scope: Scope, subject: Subject, copies: readonly string[]): Promise<Subject[]> {
  const others = copies.filter((id) => id !== subject.moment)
  const rows = await tx.momentCheck.findMany({
    where: { momentId: { in: others }, by: scope.account },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  const last = new Map(rows.filter(({ kind }) => kind !== 'not reachable').map((row) => [row.momentId, row]))
  return [...last.values()].filter(({ kind }) => kind === 'questioned').map(subjectOf)
}

/**
 * Keeps what a head coach makes of a moment of her diver. It changes no rating and no readiness; a question is there for the
 * coach who rated, and for whoever decides on what rests on it.
 */
export function checkMoment(scope: Scope, request: CheckRequest): Promise<Outcome> {
  const { kind } = request
  return asAccount(scope.account, async (tx) => {
    const subject = await findSubject(tx, scope, request)
    const diver = subject && (await holdDiver(tx, scope, subject.diver))
    if (!subject || !diver) return notFound
    if (!(await isHeadOf(tx, scope, diver.club)))
      return refuse('not the head coach', 'Only the diver’s head coach goes through the evidence.')
    const asked = request.words.trim()
    if (kind === 'questioned' && asked === '')
      return refuse('no words', 'Say what you see otherwise: the coach who rated it answers to that.', 'words')
    const said = (await readQuestions(tx, [diver.id]))(diver.id)
    const copies = await listCopies(tx, subject.moment)
    const newest = copies.at(-1) ?? subject.moment
    const same = saidBefore(said, newest, kind, scope.account)
    if (same) return { ok: true, id: same.id }
    if (kind === 'withdrawn' && verdictOf(said.checks, newest, scope.account)?.kind !== 'questioned')
      return refuse('not asked', 'No question of yours stands there: it was taken back or accepted before.')
    const about = { club: diver.club, diver: diver.id, writtenBy: scope.account }
    const words = kind === 'questioned' ? await keepWords(tx, about, asked) : null
    const id = request.id ?? uuidv7({ msecs: scope.at, seq: 1 })
    const row = (of: Subject, what: CheckKind) => ({
      clubId: diver.club,
      diverId: diver.id,
      momentId: of.moment,
      observationId: of.observation,
      attemptId: of.attempt,
      kind: what,
      by: scope.account,
      at: new Date(scope.at),
    })
    const before = kind === 'accepted' || kind === 'questioned' ? await listAskedBefore(tx, scope, subject, copies) : []
    await tx.momentCheck.createMany({
      data: [
        // Of one instant: the lower id comes first.
        ...before.map((of) => ({ ...row(of, 'withdrawn'), id: uuidv7({ msecs: scope.at, seq: 0 }) })),
        { ...row(subject, kind), id, wordsId: words?.id ?? null },
      ],
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
    const moment = checks.find(({ id }) => id === asked.id)?.moment ?? asked.momentId
    if (verdictOf(checks, moment, asked.by)?.id !== asked.id)
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
