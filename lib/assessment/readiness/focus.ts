import type { PairKey } from '../../curriculum/edition/curriculum'
import { faultsAt } from '../../curriculum/edition/fault-at'
import type { Rating } from '../../curriculum/model'
import { lowerMedian, lowest, type SeenAttempt } from '../attempt'
import type { TargetKey } from '../record'
import { criticalRating, expectedAt } from '../verdict'
import type { Evaluation } from './evaluation'
import { bindingLeaves } from './explain'
import type { Finding, Focus } from './finding'
import { sentence } from './grammar'
import { pairsOf } from './leaf-pairs'
import { remaining } from './remaining'
import { readTarget } from './targets'
import { criterionName, pairName, type Words } from './wording'

/** A target is near enough to coach for when so many good attempts, or fewer, are wanted. */
const nearAttempts = 12
const shown = 2
const recent = 8

/** The pairs that a target waits for, each with the level index at which it is asked. */
function waitsFor(evaluation: Evaluation, finding: Finding): Map<PairKey, number> {
  const pairs = new Map<PairKey, number>()
  for (const leaf of bindingLeaves(finding))
    if (leaf.status !== 'met') for (const { pair, level } of pairsOf(evaluation, leaf)) pairs.set(pair, level)
  return pairs
}

const ratingIn = (attempt: SeenAttempt, criterion: string, critical: boolean): Rating | undefined =>
  critical ? criticalRating(attempt, criterion) : attempt.explicit.get(criterion)

/** The criteria of a pair that its last attempts show below what the level expects, with the fault seen most. */
function shortOf(evaluation: Evaluation, pair: PairKey, level: number): Omit<Focus, 'binds'>[] {
  const history = evaluation.history(pair)
  if (!history) return []
  const last = history.attempts.slice(-recent)
  return history.pair.criteria.flatMap((attached) => {
    const { key, critical, faults } = attached.criterion
    const expected = expectedAt(attached, level)
    const rated = last.flatMap((attempt) => ratingIn(attempt, key, critical) ?? [])
    const newest = last.findLast((attempt) => ratingIn(attempt, key, critical) !== undefined)
    if (rated.length === 0 || !newest) return []
    const rating = critical ? lowest(rated.slice(-history.pair.standard.clean)) : lowerMedian(rated)
    if (rating >= expected) return []
    const seen = last.flatMap((attempt) => attempt.fact.observations.flatMap((one) => one.faults))
    const count = (fault: string): number => seen.filter((one) => one === fault).length
    const fault = faults.filter((one) => count(one) > 0).sort((a, b) => count(b) - count(a))[0] ?? null
    const levelKey = evaluation.curriculum.levels[level]?.key ?? ''
    return [{ criterion: key, pair, level: levelKey, rating, expected, day: newest.fact.day, fault }]
  })
}

/**
 * The one or two criteria most worth coaching now: those that bind the most targets near to met,
 * across skills, the most recently seen first. Advice only; empty when nothing near waits for a criterion.
 */
export function focus(evaluation: Evaluation, targets: readonly TargetKey[]): Focus[] {
  const found = new Map<string, Focus>()
  for (const target of targets) {
    const { finding, held } = readTarget(evaluation, target)
    if (held === 'approved') continue
    const left = remaining(evaluation, target)
    if (left.kind === 'never' || left.attempts > nearAttempts) continue
    for (const [pair, level] of waitsFor(evaluation, finding)) {
      for (const short of shortOf(evaluation, pair, level)) {
        const known = found.get(short.criterion)
        const binds = [...new Set([...(known?.binds ?? []), target])]
        const newest = known && known.day >= short.day ? known : short
        found.set(short.criterion, { ...newest, binds })
      }
    }
  }
  return [...found.values()]
    .sort((a, b) => b.binds.length - a.binds.length || b.day - a.day || b.expected - b.rating - (a.expected - a.rating))
    .slice(0, shown)
}

/** The criterion, how it stands, and the correction to say: a cue before a drill before conditioning. */
export function sayFocus(one: Focus, words: Words): string {
  const { curriculum } = words
  const criterion = curriculum.criteria.get(one.criterion)
  const pair = curriculum.pairs.get(one.pair)
  const key = one.fault ?? criterion?.faults[0]
  const [fault] = pair && key !== undefined ? faultsAt(curriculum, pair, [key]) : []
  const corrections = fault?.corrections ?? []
  const correction = corrections.find(({ kind }) => kind === 'cue') ?? corrections[0]
  const asked = `${criterionName(one.criterion, words)} in ${pairName(one.pair, words)} is at ${one.rating}, and ${one.expected} is asked`
  const say = !correction
    ? ''
    : correction.kind === 'cue'
      ? ` Say: “${correction.text}”`
      : ` ${sentence(correction.text)}`
  return `${sentence(asked)}${say}`
}
