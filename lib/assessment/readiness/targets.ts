import type { Curriculum, PairKey } from '../../curriculum/edition/curriculum'
import { pausesOn, standDownsOn } from '../block'
import { layOffAt } from '../lay-off'
import type { DiverRecord, TargetKey } from '../record'
import { decisionsOn, levelTarget, moveTarget, targetHold, targetKeyIn } from '../target-hold'
import type { AsOf } from '../time'
import { successesSince } from '../validity'
import { findTarget } from './evaluate'
import { type Evaluation, evaluationOf } from './evaluation'
import type { Block, Finding, TargetFinding } from './finding'
import { pairsOf } from './leaf-pairs'

/** All targets of an edition: levels in order, then board moves. */
export const listTargets = (curriculum: Curriculum): TargetKey[] => [
  ...curriculum.levels.map((level) => levelTarget(level.key)),
  ...curriculum.boardMoves.map(moveTarget),
]

/** The leaves that a finding is about: of a met node those it rests on, of another all of them; levels and moves opened. */
export function listLeaves(finding: Finding): Finding[] {
  if (finding.children.length === 0) return [finding]
  const followed =
    finding.status === 'met' ? finding.binding.flatMap((index) => finding.children[index] ?? []) : finding.children
  const below = followed.flatMap(listLeaves)
  return finding.reason.code === 'branch' ? below : [finding, ...below]
}

/** The pairs that a finding rests on, each with the lowest level index at which it is asked. */
function listPairs(evaluation: Evaluation, finding: Finding): Map<PairKey, number> {
  const pairs = new Map<PairKey, number>()
  const add = (key: PairKey, level: number) => {
    if (evaluation.curriculum.pairs.has(key)) pairs.set(key, Math.min(level, pairs.get(key) ?? level))
  }
  for (const leaf of listLeaves(finding)) for (const { pair, level } of pairsOf(evaluation, leaf)) add(pair, level)
  return pairs
}

/** A return stands until there is a new success at a pair that it wants more of; a failure brings nothing back. */
function standingReturn(evaluation: Evaluation, target: TargetKey, pairs: ReadonlyMap<PairKey, number>): Block | null {
  const { curriculum, record, history } = evaluation
  const last = decisionsOn(curriculum, record, target).at(-1)
  if (last?.outcome !== 'return') return null
  const wantsMoreOf = last.wantsMoreOf.length > 0 ? last.wantsMoreOf : [...pairs.keys()]
  const answered = wantsMoreOf.some((key) => {
    const read = history(key)
    return read && successesSince(read, pairs.get(key) ?? read.pair.level, last.decidedAt).length > 0
  })
  return answered ? null : { kind: 'returned', day: last.day, wantsMoreOf }
}

function blocksOn(evaluation: Evaluation, target: TargetKey, finding: Finding): Block[] {
  const pairs = listPairs(evaluation, finding)
  const places = new Set([...pairs.keys()].flatMap((key) => evaluation.curriculum.pairs.get(key)?.holding.place ?? []))
  const layOffs = [...places].flatMap((place) => layOffAt(evaluation, place) ?? [])
  const returned = standingReturn(evaluation, target, pairs)
  return [
    ...standDownsOn(evaluation),
    ...pausesOn(evaluation, pairs.keys()),
    ...layOffs,
    ...(returned ? [returned] : []),
  ]
}

/** What an override may waive on a level or board move: age, and nothing else. */
export interface TargetWaiver {
  readonly age: boolean
}

/**
 * A level or board move put against a diver's record. Ready means approvable now: what it asks is met, it is not held
 * yet, and nothing stands against it. With `waiver`, what an override would find. Throws RangeError for a target that
 * the edition does not have.
 */
export function readTarget(
  evaluation: Evaluation,
  target: TargetKey,
  waiver: TargetWaiver = { age: false },
): TargetFinding {
  const { curriculum, record } = evaluation
  const key = targetKeyIn(curriculum, target)
  const hold = key && targetHold(curriculum, record, key)
  const finding = key && findTarget(evaluation, key, waiver.age || (hold?.kind === 'approved' && hold.waivesAge))
  if (!key || !hold || !finding) throw new RangeError(`"${target}" is not a level or board move of this edition`)
  const met = finding.status === 'met'
  const blocks = blocksOn(evaluation, key, finding)
  const held =
    hold.kind === 'approved' ? (met ? 'approved' : 'to review') : hold.kind === 'recognised' ? 'recognised' : 'no'
  return { target: key, finding, blocks, held, ready: met && held === 'no' && blocks.length === 0 }
}

/** `readTarget` for one question; use an `Evaluation` where more than one target is asked. */
export const evaluateTarget = (
  curriculum: Curriculum,
  record: DiverRecord,
  target: TargetKey,
  date: AsOf,
  waiver?: TargetWaiver,
): TargetFinding => readTarget(evaluationOf(curriculum, record, date), target, waiver)

/** Ids of sign-offs and decisions made by override that a finding rests on: what rests on them says so. */
export function overridesUnder(evaluation: Evaluation, finding: Finding): string[] {
  const pairs = [...listPairs(evaluation, finding).keys()]
  const reached = new Set(pairs.flatMap((key) => [key, ...evaluation.holdings.restsOn(key).keys()]))
  const signed = [...reached].flatMap((key) => {
    const { by } = evaluation.holdings.of(key)
    return by?.byOverride ? [by.id] : []
  })
  const decided = listLeaves(finding).flatMap(({ reason, evidence }) =>
    reason.code === 'approved' && reason.byOverride ? evidence : [],
  )
  return [...signed, ...decided]
}
