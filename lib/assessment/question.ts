import { type MomentCheck, verdictOf } from './moment-check'
import { effectiveObservations } from './observation'
import { type Refused, refuse } from './outcome'
import type { TargetFinding } from './readiness/finding'
import type { AttemptFact } from './record'
import type { Instant } from './time'

/** What the coach who rated a moment answered to a question about it. */
export interface QuestionAnswer {
  readonly id: string
  readonly question: string
  readonly by: string
  readonly at: Instant
}

/** How a decision said that a question was answered; `left open` with a reason. */
export const answeredHow = ['answered', 'settled', 'left open'] as const
export type AnsweredHow = (typeof answeredHow)[number]

/** What a decision said of one question. */
export interface SaidOfQuestion {
  readonly decision: string
  readonly question: string
  readonly how: AnsweredHow
}

/** All that was asked about a diver's moments and said to it. It stands beside her record: no rule of evidence reads it. */
export interface Questions {
  readonly checks: readonly MomentCheck[]
  readonly answers: readonly QuestionAnswer[]
  readonly said: readonly SaidOfQuestion[]
}

/** A question that stands: what was asked, the answers so far, and the observation that corrected the one asked about. */
export interface Question {
  readonly asked: MomentCheck
  readonly answers: readonly QuestionAnswer[]
  readonly correction: string | null
}

/** Whether the coach has answered, in words or by a correction. */
export const isAnswered = ({ answers, correction }: Question): boolean => answers.length > 0 || correction !== null

/** The newest view of the same coach that replaced an observation; null while that one is in force. */
function correctionOf(attempt: AttemptFact | undefined, observation: string): string | null {
  const views = attempt?.observations ?? []
  const coach = views.find(({ id }) => id === observation)?.coach
  const inForce = effectiveObservations(views).find((view) => view.coach === coach)
  return inForce && inForce.id !== observation ? inForce.id : null
}

/** The one question with all that was said to it, whether it still stands or not. */
export const questionOf = (
  asked: MomentCheck,
  { answers }: Pick<Questions, 'answers'>,
  attempts: readonly AttemptFact[],
): Question => ({
  asked,
  answers: answers.filter(({ question }) => question === asked.id),
  correction: correctionOf(
    attempts.find(({ id }) => id === asked.attempt),
    asked.observation,
  ),
})

/**
 * The questions that stand: each head coach's last word on a moment where it is a question, until she takes it back or
 * accepts, or a decision says that it was answered or settled. Oldest first.
 */
export function standingQuestions(questions: Questions, attempts: readonly AttemptFact[]): Question[] {
  const { checks, said } = questions
  const closed = new Set(said.filter(({ how }) => how !== 'left open').map(({ question }) => question))
  return checks
    .filter((check) => check.kind === 'questioned' && !closed.has(check.id))
    .filter((check) => verdictOf(checks, check.moment, check.by)?.id === check.id)
    .map((check) => questionOf(check, questions, attempts))
    .sort((a, b) => a.asked.at - b.asked.at || (a.asked.id < b.asked.id ? -1 : 1))
}

/** Of questions that stand, those about an attempt that a finding rests on. */
export function questionsUnder(standing: readonly Question[], found: TargetFinding): Question[] {
  const cited = new Set(found.finding.evidence)
  return standing.filter(({ asked }) => cited.has(asked.attempt))
}

/** What a head coach says of one question when she decides. */
export interface QuestionSaying {
  readonly question: string
  readonly how: AnsweredHow | null
  /** Why it is left open. */
  readonly reason: string
}

/** What a decision says of a question that stood at it; a reason only where it is left open. */
export interface DecidedQuestion {
  readonly question: Question
  readonly how: AnsweredHow
  readonly reason: string | null
}

/**
 * What is said of each question under a decision, or what is still to be said: nothing that stands goes by unmentioned, and
 * none of it stops a decision, since a question may be left open with a reason.
 */
export function judgeSayings(
  standing: readonly Question[],
  sayings: readonly QuestionSaying[],
): { readonly ok: true; readonly questions: readonly DecidedQuestion[] } | { readonly ok: false; refusal: Refused } {
  const questions: DecidedQuestion[] = []
  for (const question of standing) {
    const { id } = question.asked
    const saying = sayings.find((one) => one.question === id)
    const how = saying?.how ?? null
    const reason = saying?.reason.trim() || null
    if (how === null) {
      const message = 'A question about its evidence stands. Say how it was answered, or why it is left open.'
      return refuse('question stands', message, `how:${id}`)
    }
    if (how === 'answered' && !isAnswered(question)) {
      const message = 'The coach has not answered yet. Look again yourself and settle it, or leave it open and say why.'
      return refuse('not answered', message, `how:${id}`)
    }
    if (how === 'left open' && reason === null)
      return refuse('no reason', 'Say why the question is left open.', `why:${id}`)
    questions.push({ question, how, reason: how === 'left open' ? reason : null })
  }
  return { ok: true, questions }
}
