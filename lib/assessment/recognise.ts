import type { Family } from '../curriculum/dives/model'
import type { PairKey } from '../curriculum/edition/curriculum'
import { pausesOn, standDownsOn } from './block'
import type { Refused } from './outcome'
import type { Evaluation } from './readiness/evaluation'
import { sayBlock } from './readiness/say-block'
import { dayName, pairName, stepName, type Words } from './readiness/wording'
import type { RecognitionFact, TargetKey } from './record'
import { standingShortfalls } from './standing'
import { levelTarget, moveTarget, targetHold, targetRequirement, wasHeld } from './target-hold'

/** What a head coach recognises: a holding at a level, a level, or a board move. */
export type Recognisable = RecognitionFact['what']

/** Why something is not recognised: each has its sentence. */
export type RecognitionRefusal = Refused & {
  readonly code: 'unknown' | 'blocked' | 'fell short' | 'signed before'
}

const refuse = (code: RecognitionRefusal['code'], message: string): RecognitionRefusal => ({ code, message })

/** The target that is recognised, or null for a holding. */
const targetIn = (what: Recognisable): TargetKey | null =>
  what.kind === 'level' ? levelTarget(what.level) : what.kind === 'boardMove' ? moveTarget(what) : null

/** How what is recognised stands in the ledger: `holding:101C@1m:LEVEL`, `level:KEY`, `move:FAMILY:PLACE`. */
export const recognisedKey = (what: Recognisable): string =>
  what.kind === 'holding' ? `holding:${what.pair}:${what.level}` : (targetIn(what) ?? '')

const holdingKey = /^holding:([^:@]+@[^:@]+):([^:]+)$/
const moveKey = /^move:([a-z]+):([^:]+)$/

/** Reads such a key again; null when it is none. Whether the edition has it is for the rule to say. */
export function readRecognisedKey(key: string): Recognisable | null {
  const [, pair, level] = holdingKey.exec(key) ?? []
  if (pair && level) return { kind: 'holding', pair: pair as PairKey, level }
  const [, family, to] = moveKey.exec(key) ?? []
  if (family && to) return { kind: 'boardMove', family: family as Family, to }
  return key.startsWith('level:') ? { kind: 'level', level: key.slice('level:'.length) } : null
}

function refuseHolding(
  evaluation: Evaluation,
  pair: PairKey,
  levelKey: string,
  words: Words,
): RecognitionRefusal | null {
  const history = evaluation.history(pair)
  const level = evaluation.curriculum.levelIndex(levelKey)
  if (!history || level < history.pair.level)
    return refuse('unknown', 'The curriculum does not teach that there, at that level.')
  const name = pairName(pair, words)
  if (evaluation.holdings.of(pair).all.length > 0)
    return refuse(
      'signed before',
      `${name} was signed or recognised here before. From then on it is shown on the deck.`,
    )
  const pause = pausesOn(evaluation, [pair])[0]
  if (pause) return refuse('blocked', sayBlock(pause, words))
  const short = standingShortfalls(history, level)[0]
  return short
    ? refuse(
        'fell short',
        `${name} fell short of a critical criterion on ${dayName(short.day, words)}. It wants clean attempts first.`,
      )
    : null
}

function refuseTarget(evaluation: Evaluation, target: TargetKey, words: Words): RecognitionRefusal | null {
  const { curriculum, record } = evaluation
  if (targetRequirement(curriculum, target) === null)
    return refuse('unknown', 'The curriculum has no such level or board move.')
  const before = targetHold(curriculum, record, target).kind !== 'none' || wasHeld(curriculum, record, target)
  return before ? refuse('signed before', `${stepName(target, words)} was decided or recognised here before.`) : null
}

/**
 * Why something may not be recognised for a diver now, or null. It is for what was held before anybody
 * here saw it: whatever was ever signed, recognised or decided here goes its own way, and what was seen to fall short in a
 * critical criterion, is paused, or belongs to a diver who is stood down is not recognised over that.
 */
export function refuseRecognition(evaluation: Evaluation, what: Recognisable, words: Words): RecognitionRefusal | null {
  const standDown = standDownsOn(evaluation)[0]
  if (standDown) return refuse('blocked', sayBlock(standDown, words))
  const target = targetIn(what)
  if (target) return refuseTarget(evaluation, target, words)
  return what.kind === 'holding' ? refuseHolding(evaluation, what.pair, what.level, words) : null
}
