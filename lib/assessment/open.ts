import type { Curriculum, Pair, PairKey } from '../curriculum/edition/curriculum'
import { closesPair, pausesOn, standDownsOn } from './block'
import type { PairHistory } from './history'
import { type HoldingState, isCurrentAt } from './holding-state'
import { layOffAt } from './lay-off'
import { findPrerequisite } from './readiness/evaluate'
import type { Evaluation } from './readiness/evaluation'
import type { Block, Finding } from './readiness/finding'
import { completeAttempts, recheckShown, standardOf } from './standard'

/** How a pair stands for a diver, and of a closed one by what. */
export interface OpenState {
  readonly state: 'held' | 'to sign' | 'open' | 'closed'
  readonly because: Finding | Block | null
}

/** A sign-off that can be made now. */
export interface Signable {
  /** The highest level that can be signed and is not held yet. */
  readonly level: string
  /** The full standard, or the lighter recheck that renews what lapsed lately. */
  readonly by: 'standard' | 'recheck'
  /** Attempts to cite. */
  readonly evidence: readonly string[]
}

function pairOf(curriculum: Curriculum, key: PairKey): Pair {
  const pair = curriculum.pairs.get(key)
  if (!pair) throw new RangeError(`"${key}" is not a skill at a place of this edition`)
  return pair
}

/** What closes a pair whatever the numbers say: a stand-down, a pause on it or on what it rests on, a lay-off. */
export function blockOn(evaluation: Evaluation, key: PairKey): Block | null {
  const { place } = pairOf(evaluation.curriculum, key).holding
  const holding = evaluation.holdings.of(key)
  const standDown = standDownsOn(evaluation).find((block) => closesPair(block, key, holding, evaluation))
  if (standDown) return standDown
  const pause = pausesOn(evaluation, [key])[0]
  if (pause) return pause
  const isReentry = evaluation.curriculum.layOff.some(
    (rule) => rule.place === place && rule.reentry.some((step) => `${step.skill}@${step.place}` === key),
  )
  return isReentry ? null : layOffAt(evaluation, place)
}

const unmetPrerequisite = (evaluation: Evaluation, key: PairKey): Finding | null => {
  const finding = findPrerequisite(evaluation, key)
  return finding && finding.status !== 'met' ? finding : null
}

/**
 * Whether a pair may be dived and signed: closed by a block, or by a prerequisite unless it is held; to sign when a
 * level can be signed that is not held; held; or open. Throws RangeError for a pair that the edition does not have.
 */
export function openState(evaluation: Evaluation, key: PairKey): OpenState {
  const block = blockOn(evaluation, key)
  if (block) return { state: 'closed', because: block }
  if (signable(evaluation, key)) return { state: 'to sign', because: null }
  const { state } = evaluation.holdings.of(key)
  if (state === 'current' || state === 'recognised') return { state: 'held', because: null }
  const missing = unmetPrerequisite(evaluation, key)
  return missing ? { state: 'closed', because: missing } : { state: 'open', because: null }
}

/** True when an attempt at the pair earns nothing until a head coach releases it. */
export const isClosed = (evaluation: Evaluation, key: PairKey): boolean => openState(evaluation, key).state === 'closed'

/**
 * The highest level at which the pair can be signed now and is not held: standard or recheck reached, prerequisites
 * met, nothing in the way. Null when there is none. Whether this coach may sign is a matter of scope (lib/access).
 */
export function signable(evaluation: Evaluation, key: PairKey): Signable | null {
  const pair = pairOf(evaluation.curriculum, key)
  const history = evaluation.history(key)
  if (!history || blockOn(evaluation, key)) return null
  const holding = evaluation.holdings.of(key)
  for (let level = evaluation.curriculum.levels.length - 1; level >= Math.max(0, pair.level); level--) {
    if (isCurrentAt(holding, level)) return null
    const reached = byStandard(history, level) ?? byRecheck(history, level, holding)
    if (reached)
      return unmetPrerequisite(evaluation, key)
        ? null
        : { ...reached, level: evaluation.curriculum.levels[level]?.key ?? '' }
  }
  return null
}

type Reached = Omit<Signable, 'level'>

function byStandard(history: PairHistory, level: number): Reached | null {
  const { holds, successes } = standardOf(history, level)
  return holds ? { by: 'standard', evidence: successes } : null
}

/** Within the days of grace a lapsed sign-off is renewed by the recheck, from successes newer than the lapse. */
function byRecheck(history: PairHistory, level: number, holding: HoldingState): Reached | null {
  const lapsed = holding.all.filter(
    (one) => one.state === 'lapsed' && one.level === level && history.date.day <= one.renewBy,
  )
  for (const { validUntil } of lapsed) {
    const from = history.attempts.findIndex(({ fact }) => fact.day > validUntil)
    if (from < 0 || !recheckShown(history, level, from)) continue
    const newer = completeAttempts(history, level, from).filter(({ verdict }) => verdict === 'success')
    return { by: 'recheck', evidence: newer.map(({ attempt }) => attempt.fact.id) }
  }
  return null
}
