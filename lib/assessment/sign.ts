import type { Pair, PairKey } from '../curriculum/edition/curriculum'
import { placeFacts } from '../curriculum/place'
import { standDownsOn } from './block'
import { isCurrentAt } from './holding-state'
import { blockOn, signable } from './open'
import { type Refused, refuse } from './outcome'
import { findPrerequisite } from './readiness/evaluate'
import type { Evaluation } from './readiness/evaluation'
import { explain } from './readiness/explain'
import { sayBlock } from './readiness/say-block'
import { sayReason } from './readiness/say-reason'
import type { Words } from './readiness/wording'
import type { SignOffWaiver } from './record'
import { fewestSuccesses, standardOf } from './standard'

/** What a coach wants to sign. */
export interface SignRequest {
  readonly pair: PairKey
  readonly level: string
  /** What a head coach waives in writing; null: nothing. */
  readonly waiver: SignOffWaiver | null
  readonly reason: string | null
}

/** What the signer is to the diver's club, and whether the pair lies within her scope. */
export interface Signer {
  readonly role: 'assistant' | 'head'
  readonly withinScope: boolean
}

/** By which standard and on what evidence it may be signed, or the refusal and its sentence. */
export type SignJudgement =
  | { readonly ok: true; readonly by: 'standard' | 'recheck'; readonly evidence: readonly string[] }
  | { readonly ok: false; readonly refusal: Refused }

function refuseSigner(pair: Pair, request: SignRequest, signer: Signer): SignJudgement | null {
  const name = `${pair.skill.title} at ${placeFacts[pair.holding.place].label}`
  if (pair.at.signer === 'head' && signer.role !== 'head')
    return refuse('not the signer', `${name} is signed by the head coach.`)
  if (!signer.withinScope) return refuse('beyond scope', `${name} lies beyond what you may sign. Ask the head coach.`)
  if (request.waiver === null) return null
  if (signer.role !== 'head') return refuse('not the signer', 'Only the head coach may sign by override.', 'waiver')
  if (!request.reason?.trim()) return refuse('no reason', 'Say in writing why you sign by override.', 'reason')
  if (request.waiver.count !== undefined && request.waiver.count < fewestSuccesses)
    return refuse('too few', `An override may bring the count down to ${fewestSuccesses}, and no further.`, 'waiver')
  return null
}

/**
 * Whether a skill may be signed now, and on what evidence. Never waived: a standing or unseen critical
 * criterion, a missing prerequisite, a pause, a stand-down. The refusal is a sentence for the signer.
 */
export function judgeSignOff(
  evaluation: Evaluation,
  request: SignRequest,
  signer: Signer,
  words: Words,
): SignJudgement {
  const pair = evaluation.curriculum.pairs.get(request.pair)
  const history = evaluation.history(request.pair)
  const level = evaluation.curriculum.levelIndex(request.level)
  if (!pair || !history || level < pair.level)
    return refuse('unknown', 'The curriculum does not teach that there, at that level.')
  const wrong = refuseSigner(pair, request, signer)
  if (wrong) return wrong
  const block = standDownsOn(evaluation)[0] ?? blockOn(evaluation, request.pair)
  if (block) return refuse('blocked', sayBlock(block, words))
  const before = findPrerequisite(evaluation, request.pair)
  if (before && before.status !== 'met') return refuse('prerequisite', `Not yet: ${explain(before, words).sentence}`)
  const holding = evaluation.holdings.of(request.pair)
  if (isCurrentAt(holding, level))
    return refuse('signed before', 'It is signed already, at this level or a higher one.')
  const now = signable(evaluation, request.pair)
  if (now && evaluation.curriculum.levelIndex(now.level) >= level)
    return { ok: true, by: now.by, evidence: now.evidence }
  const standard = standardOf(history, level, request.waiver)
  if (standard.holds && request.waiver) return { ok: true, by: 'standard', evidence: standard.successes }
  const reason = { code: 'not enough', level: request.level, shortage: standard.shortage, signedAt: null } as const
  const node = { kind: 'signOff', ...pair.holding, atLevel: request.level } as const
  return refuse('standard', sayReason({ node, reason }, words))
}
