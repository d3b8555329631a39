import type { Curriculum } from '../../curriculum/edition/curriculum'
import type { DiverRecord, TargetKey } from '../record'
import { levelTarget } from '../target-hold'
import { type AsOf, asOfDay, type EpochDay } from '../time'
import { type Evaluation, evaluationOf } from './evaluation'
import { bindingLeaves } from './explain'
import type { Finding, Remaining, Status, TargetFinding } from './finding'
import { changeDays } from './ready-since'
import { remaining, remainingOf } from './remaining'
import { readTarget } from './targets'

/** How a diver stands to a target, as the region reads it. Stood-down divers are counted apart. */
export const standings = ['ready', 'near', 'held up', 'on the way', 'stood down', 'held'] as const
export type Standing = (typeof standings)[number]

/** A standing with the finding that it is drawn from. */
export interface TargetStanding {
  readonly standing: Standing
  readonly found: TargetFinding
  /** Null of a target that is held, and of a level above the next one. */
  readonly left: Remaining | null
}

/** At most so many good attempts from ready, and no new skill: near. */
const nearAttempts = 3
/** So long without a binding leaf getting better, while she trained: held up. */
const heldUpDays = 60

const ranks: Readonly<Record<Status, number>> = { met: 3, lapsed: 2, unproven: 1, unmet: 0 }

const isNear = (left: Remaining): boolean =>
  left.kind === 'count' && left.attempts <= nearAttempts && left.newSkills.length === 0 && left.notBefore === null

/** Good attempts that a leaf wants, with what it rests on; never is more than any number. */
function distance(evaluation: Evaluation, leaf: Finding): number {
  const left = remainingOf(evaluation, leaf.node, 'advancement')
  return left.kind === 'never' ? Number.POSITIVE_INFINITY : left.attempts
}

/** Whether any leaf that binds now stands better than it did then: by status, or nearer in good attempts. */
function anyBetter(now: Evaluation, then: Evaluation, target: TargetKey): boolean {
  const before = new Map(allLeaves(readTarget(then, target).finding).map((leaf) => [leaf.node, leaf]))
  return bindingLeaves(readTarget(now, target).finding)
    .filter((leaf) => leaf.status !== 'met')
    .some((leaf) => {
      const earlier = before.get(leaf.node)
      if (!earlier) return true
      if (ranks[leaf.status] !== ranks[earlier.status]) return ranks[leaf.status] > ranks[earlier.status]
      return distance(now, leaf) < distance(then, earlier)
    })
}

const allLeaves = (finding: Finding): Finding[] =>
  finding.children.length === 0 ? [finding] : [finding, ...finding.children.flatMap(allLeaves)]

/** Held up: a record of at least sixty days, in which she trained, and no binding leaf got better. */
function isHeldUp({ now, before }: DiverDates, target: TargetKey): boolean {
  const from = now.date.day - heldUpDays
  const began = now.record.attempts[0]?.day
  const trained = now.record.attempts.some((attempt) => attempt.day > from && attempt.day <= now.date.day)
  return began !== undefined && began <= from && trained && !anyBetter(now, before(), target)
}

/** A diver's evaluation on a date, and sixty days before it, which is worked out when it is first asked. */
export interface DiverDates {
  readonly now: Evaluation
  readonly before: () => Evaluation
}

/** Both evaluations of a diver; `zone` is her club's. */
export function datesOf(curriculum: Curriculum, record: DiverRecord, date: AsOf, zone: string): DiverDates {
  let earlier: Evaluation | undefined
  return {
    now: evaluationOf(curriculum, record, date),
    before: () => {
      earlier ??= evaluationOf(curriculum, record, asOfDay(date.day - heldUpDays, zone))
      return earlier
    },
  }
}

/** Whether a target is the next level or a board move; how far a level above the next one is, nobody asks. */
export function isAsked(now: Evaluation, target: TargetKey): boolean {
  const { levels } = now.curriculum
  const below = levels[levels.findIndex(({ key }) => levelTarget(key) === target) - 1]
  return !below || readTarget(now, levelTarget(below.key)).held !== 'no'
}

/** How a diver stands to a target. To a level above the next one she is on the way, however near. */
export function standingOf(dates: DiverDates, target: TargetKey): TargetStanding {
  const found = readTarget(dates.now, target)
  if (found.held === 'approved' || found.held === 'to review') return { standing: 'held', found, left: null }
  if (!isAsked(dates.now, target)) {
    const isStoodDown = found.blocks.some((block) => block.kind === 'stand-down')
    return { standing: isStoodDown ? 'stood down' : 'on the way', found, left: null }
  }
  const left = remaining(dates.now, target)
  const as = (standing: Standing): TargetStanding => ({ standing, found, left })
  if (found.blocks.some((block) => block.kind === 'stand-down')) return as('stood down')
  if (found.ready) return as('ready')
  if (isNear(left)) return as('near')
  return as(isHeldUp(dates, target) ? 'held up' : 'on the way')
}

/**
 * The first day after `date` on which a standing of this diver can change though nothing new becomes known; null when
 * none can. Besides the days on which a finding changes: those days sixty days on, when what it is held against moves over
 * them, and after each as many more as a standard asks days, over which imagined attempts no longer share a day with it.
 */
export function nextStandingChange(
  curriculum: Curriculum,
  record: DiverRecord,
  date: AsOf,
  zone: string,
): EpochDay | null {
  const most = Math.max(0, ...[...curriculum.pairs.values()].map(({ standard }) => standard.days))
  const after = Array.from({ length: most + 1 }, (_, days) => days)
  const spans = [...after, ...after.map((days) => days + heldUpDays)]
  let next: EpochDay | null = null
  for (const day of changeDays(curriculum, record, zone))
    for (const span of spans) if (day + span > date.day && (next === null || day + span < next)) next = day + span
  return next
}
