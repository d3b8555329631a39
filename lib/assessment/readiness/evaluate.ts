import type { Curriculum, PairKey } from '../../curriculum/edition/curriculum'
import type { Branch, Requirement, RequirementReader } from '../../curriculum/requirement/model'
import { readRequirement } from '../../curriculum/requirement/model'
import type { DiverRecord, TargetKey } from '../record'
import { targetRequirement } from '../target-hold'
import type { AsOf } from '../time'
import { branchFinding } from './branch'
import { type Context, type Evaluation, evaluationOf } from './evaluation'
import type { Finding } from './finding'
import { ageFinding, venueFinding } from './leaf-age'
import { criterionFinding } from './leaf-criterion'
import { diveListFinding } from './leaf-dive-list'
import { signOffFinding } from './leaf-sign-off'
import { targetFinding } from './leaf-target'

interface Asking {
  readonly evaluation: Evaluation
  readonly context: Context
  /** An override waived age in this very requirement; levels and moves below it have decisions of their own. */
  readonly waivesAge: boolean
}

const branch = (node: Branch, asking: Asking): Finding =>
  branchFinding(
    node,
    node.of.map((child) => read(child, asking)),
  )

const reader: RequirementReader<Finding, Asking> = {
  all: branch,
  any: branch,
  atLeast: branch,
  signOff: (leaf, { evaluation, context }) =>
    signOffFinding(leaf, evaluation, context, (pair) => findPrerequisite(evaluation, pair)),
  criterion: (leaf, { evaluation }) => criterionFinding(leaf, evaluation),
  level: (leaf, { evaluation, context }) => targetFinding(leaf, evaluation, context, findsTarget(evaluation)),
  boardMove: (leaf, { evaluation, context }) => targetFinding(leaf, evaluation, context, findsTarget(evaluation)),
  age: (leaf, { evaluation, waivesAge }) => ageFinding(leaf, evaluation, waivesAge),
  diveList: (leaf, { evaluation, context }) => diveListFinding(leaf, evaluation, context),
  venue: (leaf, { evaluation }) => venueFinding(leaf, evaluation),
}

/** Reads a node, remembering what was found; with age waived nothing is remembered. */
function read(node: Requirement, asking: Asking): Finding {
  if (asking.waivesAge) return readRequirement(reader, node, asking)
  const found = asking.evaluation.found[asking.context]
  const known = found.get(node)
  if (known) return known
  const finding = readRequirement(reader, node, asking)
  found.set(node, finding)
  return finding
}

/** As `read`, for a requirement that may lead back to itself in a draft: null while it is being read. */
function readOnce(node: Requirement, asking: Asking): Finding | null {
  const { open } = asking.evaluation
  if (open.has(node)) return null
  open.add(node)
  const finding = read(node, asking)
  open.delete(node)
  return finding
}

/** The finding of a requirement in an evaluation. */
export const find = (evaluation: Evaluation, requirement: Requirement, context: Context): Finding =>
  read(requirement, { evaluation, context, waivesAge: false })

/** The finding of what a pair's prerequisite asks in training; null when it asks nothing. */
export function findPrerequisite(evaluation: Evaluation, pair: PairKey): Finding | null {
  const node = evaluation.curriculum.pairs.get(pair)?.prerequisite ?? null
  return node && (readOnce(node, { evaluation, context: 'training', waivesAge: false }) ?? unanswered(node))
}

/** The finding of what a target itself asks; null when the edition has no such target. */
export function findTarget(evaluation: Evaluation, target: TargetKey, waivesAge = false): Finding | null {
  const node = targetRequirement(evaluation.curriculum, target)
  return node && readOnce(node, { evaluation, context: 'advancement', waivesAge })
}

const findsTarget =
  (evaluation: Evaluation) =>
  (target: TargetKey, waivesAge: boolean): Finding | null =>
    findTarget(evaluation, target, waivesAge)

/** A circle of prerequisites, which the linter refuses, is not met by going round it. */
const unanswered = (node: Requirement): Finding => ({
  node,
  status: 'unproven',
  reason: { code: 'branch', met: 0, wanted: 1, outOf: 1 },
  evidence: [],
  children: [],
  binding: [],
})

/**
 * Evaluates a requirement for a diver on a date, under one edition: pure, and a tree of statuses with their reasons and
 * evidence, never a bare yes or no. Use an `Evaluation` and `find` where more than one requirement is asked.
 */
export const evaluate = (
  curriculum: Curriculum,
  record: DiverRecord,
  requirement: Requirement,
  date: AsOf,
  context: Context,
): Finding => find(evaluationOf(curriculum, record, date), requirement, context)
