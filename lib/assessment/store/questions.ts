import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import type { MomentCheck } from '../moment-check'
import type { AnsweredHow, Questions } from '../question'
import { listCopied } from './copies'

/** What was asked about a diver's moments and said to it, with the words that are not erased. */
export interface DiverQuestions extends Questions {
  /** By the id of the question or answer: what it says. None where it was erased. */
  readonly texts: ReadonlyMap<string, string>
  /** By the same ids: the commitment to it, which stays. */
  readonly commitments: ReadonlyMap<string, string>
  /** Of a question that a decision left open: why, by decision and question. */
  readonly reasons: ReadonlyMap<string, string>
}

/** The key of `reasons`. */
export const reasonKey = (decision: string, question: string): string => `${decision} ${question}`

const nothing: DiverQuestions = {
  checks: [],
  answers: [],
  said: [],
  texts: new Map(),
  commitments: new Map(),
  reasons: new Map(),
}

/** Of some divers: what was asked about their moments, each under the id of its newest copy; a diver of whom nothing was asked has nothing. */
export async function readQuestions(tx: Tx, divers: readonly string[]): Promise<(diver: string) => DiverQuestions> {
  const about = { where: { diverId: { in: [...divers] } } }
  const checks = await tx.momentCheck.findMany(about)
  if (checks.length === 0) return () => nothing
  const answers = await tx.questionAnswer.findMany({ ...about, orderBy: [{ at: 'asc' }, { id: 'asc' }] })
  const said = await tx.decisionQuestion.findMany(about)
  const wordIds = [
    ...checks.flatMap(({ wordsId }) => wordsId ?? []),
    ...answers.map(({ wordsId }) => wordsId),
    ...said.flatMap(({ reasonId }) => reasonId ?? []),
  ]
  const words = await tx.words.findMany({
    where: { id: { in: wordIds } },
    select: { id: true, text: true, commitment: true },
  })
  const wordsOf = new Map(words.map((row) => [row.id, row]))
  const worded = [...checks, ...answers]
  const pick = (of: (row: { text: string | null; commitment: string }) => string | null, diver: string) =>
    new Map(
      worded
        .filter(({ diverId }) => diverId === diver)
        .flatMap(({ id, wordsId }) => {
          const row = wordsId === null ? undefined : wordsOf.get(wordsId)
          const value = row ? of(row) : null
          return value === null ? [] : [[id, value] as const]
        }),
    )
  const newest = await newestOf(tx, checks)
  const of = (diver: string): DiverQuestions => ({
    checks: checks
      .filter(({ diverId }) => diverId === diver)
      .map(toCheck)
      .map((check) => ({ ...check, moment: newest(check.moment) })),
    answers: answers
      .filter(({ diverId }) => diverId === diver)
      .map(({ id, questionId, by, at }) => ({ id, question: questionId, by, at: at.getTime() })),
    said: said
      .filter(({ diverId }) => diverId === diver)
      .map(({ decisionId, questionId, how }) => ({
        decision: decisionId,
        question: questionId,
        how: how as AnsweredHow,
      })),
    texts: pick(({ text }) => text, diver),
    commitments: pick(({ commitment }) => commitment, diver),
    reasons: new Map(
      said.flatMap(({ diverId, decisionId, questionId, reasonId }) => {
        const text = diverId === diver && reasonId !== null ? wordsOf.get(reasonId)?.text : null
        return text ? [[reasonKey(decisionId, questionId), text] as const] : []
      }),
    ),
  })
  const byDiver = new Map([...new Set(checks.map(({ diverId }) => diverId))].map((diver) => [diver, of(diver)]))
  return (diver) => byDiver.get(diver) ?? nothing
}

/**
 * Under which id a moment is shown now: where a correction took it along, what was said of it is said of the newest copy.
 * While it is hidden, without consent to video, it keeps the id that it was asked under.
 */
async function newestOf(tx: Tx, checks: readonly CheckRow[]): Promise<(moment: string) => string> {
  const attempts = [...new Set(checks.map(({ attemptId }) => attemptId))]
  const copied = await listCopied(tx, { attemptId: { in: attempts } })
  const newest = new Map(copied.map(({ id, copies }) => [id, copies.at(-1) ?? id]))
  return (moment) => newest.get(moment) ?? moment
}

interface CheckRow {
  readonly id: string
  readonly momentId: string
  readonly observationId: string
  readonly attemptId: string
  readonly by: string
  readonly at: Date
  readonly kind: string
}

const toCheck = (row: CheckRow): MomentCheck => ({
  id: row.id,
  moment: row.momentId,
  observation: row.observationId,
  attempt: row.attemptId,
  by: row.by,
  at: row.at.getTime(),
  kind: row.kind as MomentCheck['kind'],
})

/** The divers about whose moments something was asked that the account rated; of those that it may see. */
export const listDiversAsked = (scope: Scope): Promise<string[]> =>
  asAccount(scope.account, async (tx) => {
    const rows = await tx.$queryRaw<{ diverId: string }[]>`
      SELECT DISTINCT c."diverId" FROM "MomentCheck" c JOIN "Observation" o ON o."id" = c."observationId"
      WHERE c."kind" = 'questioned' AND o."diverId" = c."diverId" AND o."coachId" = ${scope.account}::uuid`
    return rows.map(({ diverId }) => diverId)
  })
