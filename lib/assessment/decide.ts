import type { PairKey } from '../curriculum/edition/curriculum'
import { basisOf } from './basis'
import { type Refused, refuse } from './outcome'
import { type DecidedQuestion, judgeSayings, type Question, type QuestionSaying, questionsUnder } from './question'
import type { Evaluation } from './readiness/evaluation'
import { explain } from './readiness/explain'
import type { TargetFinding } from './readiness/finding'
import { sayBlock } from './readiness/say-block'
import { listLeaves, readTarget } from './readiness/targets'
import { dayName, targetName, type Words } from './readiness/wording'
import type { TargetKey } from './record'
import { decisionsOn } from './target-hold'

/** What a head coach wants to decide on a level or board move. */
export interface DecisionRequest {
  readonly target: TargetKey
  readonly outcome: 'approve' | 'override' | 'return' | 'withdraw'
  readonly reason: string | null
  /** Of a return: the pairs it wants more of; empty: all that the finding rests on. */
  readonly wantsMoreOf: readonly PairKey[]
  /** Of a board move: what the diver wants. */
  readonly diverWants: 'yes' | 'not yet' | null
  /** Why no coach but the decider is in the evidence, where that is so. */
  readonly onlyCoach: string | null
  /** What is said of each question that stands about its evidence. */
  readonly questions?: readonly QuestionSaying[]
  /** Digest of what she saw (basis.ts); none where nobody looked at a page. */
  readonly basis?: string | null
}

/** What the decision comes to: the finding it rests on, or the refusal and its sentence. */
export type DecisionJudgement =
  | {
      readonly ok: true
      readonly found: TargetFinding
      readonly waivesAge: boolean
      readonly wantsMoreOf: readonly PairKey[]
      /** The questions that stood at it, with what was said of each; none of a return or a withdrawal, which close nothing. */
      readonly questions: readonly DecidedQuestion[]
    }
  | { readonly ok: false; readonly refusal: Refused }

/** The pairs that a finding rests on, in reading order. */
export function pairsUnder(found: TargetFinding): PairKey[] {
  const pairs = listLeaves(found.finding).flatMap(({ node }): PairKey[] =>
    node.kind === 'signOff'
      ? [`${node.skill}@${node.place}`]
      : node.kind === 'criterion'
        ? node.at.map((at): PairKey => `${at.skill}@${at.place}`)
        : [],
  )
  return [...new Set(pairs)]
}

/** The coaches in the evidence: who signed what it rests on, and whose observations were cited for it. */
export function coachesUnder(evaluation: Evaluation, found: TargetFinding): string[] {
  const pairs = new Set(pairsUnder(found))
  const signOffs = evaluation.record.signOffs.filter((fact) => pairs.has(fact.pair) && fact.revokedAt === null)
  const cited = new Set(signOffs.flatMap((fact) => fact.evidence))
  const seen = evaluation.record.attempts.filter((attempt) => cited.has(attempt.id))
  return [
    ...new Set([
      ...signOffs.map((fact) => fact.coach),
      ...seen.flatMap((attempt) => attempt.observations.map((one) => one.coach)),
    ]),
  ]
}

function refuseWords(request: DecisionRequest, coaches: readonly string[], decider: string): DecisionJudgement | null {
  if (request.outcome !== 'approve' && !request.reason?.trim())
    return refuse('no reason', 'Say in writing why: the coach and the diver will read it.', 'reason')
  if (request.outcome === 'return' || request.outcome === 'withdraw') return null
  if (request.target.startsWith('move:') && request.diverWants === null)
    return refuse('not asked', 'Say what the diver wants: ask her before you decide on a higher board.', 'diverWants')
  if (coaches.every((coach) => coach === decider) && !request.onlyCoach?.trim())
    return refuse(
      'only coach',
      'You are the only coach in the evidence. Say why no other was there, or ask one to look.',
      'onlyCoach',
    )
  return null
}

/** Why a target cannot be approved as it stands: what has been decided, what blocks it, or what it still wants. */
function refuseFinding(evaluation: Evaluation, found: TargetFinding, words: Words): DecisionJudgement | null {
  const name = targetName(found.target, words)
  const last = decisionsOn(evaluation.curriculum, evaluation.record, found.target).at(-1)
  if (found.held !== 'no' && found.held !== 'recognised')
    return refuse(
      'decided before',
      `Decided already: ${name} was approved${last ? ` on ${dayName(last.day, words)}` : ''}.`,
    )
  const block = found.blocks[0]
  if (block) return refuse('blocked', sayBlock(block, words))
  if (found.finding.status !== 'met')
    return refuse('not met', `No longer ready: ${explain(found.finding, words).sentence}`)
  return null
}

/** Evidence that was superseded, or anything else that moved under an open page: she has not seen what she decides on. */
function refuseChanged(
  evaluation: Evaluation,
  found: TargetFinding,
  { basis }: DecisionRequest,
  standing: readonly Question[],
): DecisionJudgement | null {
  if (!basis || basis === basisOf(evaluation, found, standing)) return null
  return refuse('changed', 'What this rests on has changed since you opened it. Look at it again, then decide.')
}

/** What a decision is judged on: the record as it is now, who decides, and the questions about the diver's moments that stand. */
export interface DecisionCase {
  readonly evaluation: Evaluation
  readonly decider: string
  readonly words: Words
  readonly standing: readonly Question[]
}

/** An approval, plain or by override, where nothing stands against it: asked are its words, and the questions about its evidence. */
function approval(
  { evaluation, decider, standing }: DecisionCase,
  request: DecisionRequest,
  found: TargetFinding,
): DecisionJudgement {
  const refused = refuseWords(request, coachesUnder(evaluation, found), decider)
  if (refused) return refused
  const said = judgeSayings(questionsUnder(standing, found), request.questions ?? [])
  return said.ok
    ? { ok: true, found, waivesAge: request.outcome === 'override', wantsMoreOf: [], questions: said.questions }
    : said
}

/**
 * What a head coach's decision comes to, on the record as it is now. An override waives age on a level
 * or board move and nothing else; a return and a withdrawal need what they act on. The refusal is a sentence for her.
 */
export function judgeDecision(on: DecisionCase, request: DecisionRequest): DecisionJudgement {
  const { evaluation, decider, words, standing } = on
  const plain = readTarget(evaluation, request.target)
  const taken = (wantsMoreOf: readonly PairKey[]): DecisionJudgement =>
    refuseWords(request, coachesUnder(evaluation, plain), decider) ?? {
      ok: true,
      found: plain,
      waivesAge: false,
      wantsMoreOf,
      questions: [],
    }
  const refused = (found: TargetFinding) =>
    refuseFinding(evaluation, found, words) ?? refuseChanged(evaluation, plain, request, standing)
  switch (request.outcome) {
    case 'approve':
      return refused(plain) ?? approval(on, request, plain)
    case 'override': {
      const waived = readTarget(evaluation, request.target, { age: true })
      if (plain.finding.status === 'met')
        return refuse('nothing to waive', 'Nothing stands against it that an override waives: approve it.')
      return refused(waived) ?? approval(on, request, waived)
    }
    case 'return': {
      const rests = pairsUnder(plain)
      const strange = request.wantsMoreOf.find((pair) => !rests.includes(pair))
      if (strange)
        return refuse('not under it', `It does not rest on ${strange}: choose among what it rests on.`, 'wantsMoreOf')
      return (
        refuseFinding(evaluation, plain, words) ?? taken(request.wantsMoreOf.length > 0 ? request.wantsMoreOf : rests)
      )
    }
    case 'withdraw':
      if (plain.held === 'no') return refuse('not held', 'It was never approved, or it was withdrawn before.')
      return taken([])
  }
}
