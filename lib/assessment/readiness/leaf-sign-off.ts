import { type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { SignOffLeaf } from '../../curriculum/requirement/model'
import { bestOf, type SignedState, stateOf } from '../holding-state'
import { askedLevel } from '../rests-on'
import type { Doubt } from '../shortfall'
import { standardOf } from '../standard'
import type { Context, Evaluation } from './evaluation'
import type { Finding } from './finding'
import { leafFinding, notInEdition } from './leaf'

/** Finds the prerequisite of a pair in training; null when it has none. */
export type FindPrerequisite = (pair: PairKey) => Finding | null

/**
 * The best of what was signed that answers a sign-off leaf: current, in doubt or still to be renewed, at the level that is
 * asked or above. A recognition that was not shown here answers in training only: were it to answer "in doubt" inside a
 * level, a bad dive would raise its status from unproven.
 */
export function answeringSigned(
  leaf: SignOffLeaf,
  { curriculum, date, holdings }: Evaluation,
  context: Context,
): SignedState | undefined {
  const asked = askedLevel(curriculum, leaf)
  return bestOf(
    holdings
      .of(pairKey(leaf))
      .all.filter((one) => asked >= 0 && one.level >= asked && one.state !== 'revoked')
      .filter((one) => (context === 'training' || one.shown) && (one.state !== 'lapsed' || date.day <= one.renewBy)),
  )
}

/**
 * Met by a current sign-off at the level or above; lapsed by one in doubt or still to be renewed; else what the
 * attempts say.
 */
export function signOffFinding(
  leaf: SignOffLeaf,
  evaluation: Evaluation,
  context: Context,
  prerequisite: FindPrerequisite,
): Finding {
  const { curriculum, holdings } = evaluation
  const key = pairKey(leaf)
  const asked = askedLevel(curriculum, leaf)
  if (!curriculum.pairs.has(key)) return notInEdition(leaf, key)
  if (asked < 0) return notInEdition(leaf, leaf.atLevel ?? key)
  const best = answeringSigned(leaf, evaluation, context)
  if (best) return fromSigned(leaf, best, evaluation)
  const recognised = holdings.of(key).all.find((one) => one.level >= asked && stateOf(one) === 'recognised')
  return fromAttempts(leaf, asked, recognised, evaluation, prerequisite)
}

/** The doubt to speak of: the newest shortfall, else the oldest of the others. */
export const doubtToSay = (doubts: readonly Doubt[]): Doubt | undefined =>
  doubts.findLast(({ kind }) => kind === 'shortfall') ?? doubts[0]

const attemptOf = (doubt: Doubt): string[] =>
  doubt.kind === 'shortfall' ? [doubt.shortfall.attempt] : doubt.kind === 'evidence' ? [doubt.attempt] : []

function fromSigned(leaf: SignOffLeaf, best: SignedState, { curriculum }: Evaluation): Finding {
  const { id, day, validUntil, renewBy, byOverride, evidence } = best
  const doubt = doubtToSay(best.doubts)
  if (best.state === 'lapsed') return leafFinding(leaf, 'lapsed', { code: 'lapsed', day: validUntil, renewBy }, [id])
  if (doubt) return leafFinding(leaf, 'lapsed', { code: 'in doubt', doubt }, [id, ...attemptOf(doubt)])
  const level = curriculum.levels[best.level]?.key ?? ''
  const recognised = best.kind === 'recognition'
  const reason = { code: 'signed', level, day, validUntil, byOverride, recognised } as const
  return leafFinding(leaf, 'met', reason, [id, ...evidence])
}

/** Where nothing signed answers: it falls short, it is to be signed, or it is not enough yet. */
function fromAttempts(
  leaf: SignOffLeaf,
  asked: number,
  recognised: SignedState | undefined,
  { curriculum, history, holdings }: Evaluation,
  prerequisite: FindPrerequisite,
): Finding {
  const key = pairKey(leaf)
  const read = history(key)
  const level = curriculum.levels[asked]?.key ?? ''
  if (!read) return notInEdition(leaf, key)
  const { holds, shortage, counted, failures, successes } = standardOf(read, asked)
  const shortfall = shortage.standing[0]
  if (shortfall)
    return leafFinding(leaf, 'unmet', { code: 'standing shortfall', level, shortfall }, [shortfall.attempt])
  if (failures > read.pair.standard.of - read.pair.standard.successes) {
    const failed = counted.filter(({ verdict }) => verdict === 'failure').map(({ attempt }) => attempt.fact.id)
    return leafFinding(leaf, 'unmet', { code: 'failing', level, failed: failures, of: counted.length }, failed)
  }
  if (recognised) {
    const { id, day, validUntil } = recognised
    return leafFinding(leaf, 'unproven', { code: 'recognised, not shown', day, lapses: validUntil }, [id])
  }
  if (!holds) {
    const lower = bestOf(holdings.of(key).all.filter((one) => one.state === 'current'))
    const signedAt = (lower && curriculum.levels[lower.level]?.key) ?? null
    return leafFinding(leaf, 'unproven', { code: 'not enough', level, shortage, signedAt }, successes)
  }
  const below = prerequisite(key)
  if (below === null || below.status === 'met')
    return leafFinding(leaf, 'unproven', { code: 'to sign', level }, successes)
  const reason = { code: 'waits for what it rests on', level } as const
  return { ...leafFinding(leaf, 'unproven', reason, successes), children: [below], binding: [0] }
}
