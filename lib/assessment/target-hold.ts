import type { Family } from '../curriculum/dives/model'
import type { Curriculum } from '../curriculum/edition/curriculum'
import type { Requirement } from '../curriculum/requirement/model'
import { listTargets as listTreeTargets } from '../curriculum/tree/target'
import type { DecisionFact, DiverRecord, RecognitionFact, TargetKey } from './record'

/** What head coaches have decided or recognised of a level or board move, whatever its requirement says now. */
export type TargetHold =
  | { readonly kind: 'none' }
  | { readonly kind: 'withdrawn'; readonly decision: DecisionFact }
  | { readonly kind: 'recognised'; readonly recognition: RecognitionFact }
  | { readonly kind: 'approved'; readonly decision: DecisionFact; readonly waivesAge: boolean }

/** The key of a level as a target. */
export const levelTarget = (level: string): TargetKey => `level:${level}`
/** The key of a board move as a target. */
export const moveTarget = (move: { readonly family: Family; readonly to: string }): TargetKey =>
  `move:${move.family}:${move.to}`

// Indexed once for each edition, so that a target's requirement stays the same node and can be remembered by it.
const requirements = new WeakMap<Curriculum, ReadonlyMap<string, Requirement | null>>()

/** The key by which the edition knows a target: a level key that went is followed to the one it became. */
export function targetKeyIn(curriculum: Curriculum, target: TargetKey): TargetKey | null {
  if (!target.startsWith('level:')) return requirementsOf(curriculum).has(target) ? target : null
  const level = curriculum.levels[curriculum.levelIndex(target.slice('level:'.length))]
  return level ? levelTarget(level.key) : null
}

function requirementsOf(curriculum: Curriculum): ReadonlyMap<string, Requirement | null> {
  const known = requirements.get(curriculum)
  if (known) return known
  const made = new Map(listTreeTargets(curriculum).map(({ key, requirement }) => [key, requirement]))
  requirements.set(curriculum, made)
  return made
}

/** What a target asks: of a level above the first, the level below is part of it. Null when the edition has no such target. */
export function targetRequirement(curriculum: Curriculum, target: TargetKey): Requirement | null {
  const key = targetKeyIn(curriculum, target)
  return (key && requirementsOf(curriculum).get(key)) ?? null
}

const sameTarget = (curriculum: Curriculum, a: TargetKey, b: TargetKey): boolean =>
  a === b || targetKeyIn(curriculum, a) === b

const recognisedTarget = (fact: RecognitionFact): TargetKey | null =>
  fact.what.kind === 'level'
    ? levelTarget(fact.what.level)
    : fact.what.kind === 'boardMove'
      ? moveTarget(fact.what)
      : null

/** Decisions on a target in the order in which they were made; returns are among them. */
export const decisionsOn = (curriculum: Curriculum, record: DiverRecord, target: TargetKey): DecisionFact[] =>
  record.decisions
    .filter((decision) => sameTarget(curriculum, decision.target, target))
    .sort((a, b) => a.decidedAt - b.decidedAt || (a.id < b.id ? -1 : 1))

/** The newest recognition of a target that is not revoked. */
const recognitionOf = (curriculum: Curriculum, record: DiverRecord, target: TargetKey): RecognitionFact | undefined =>
  record.recognitions
    .filter((fact) => {
      const recognised = recognisedTarget(fact)
      return fact.revokedAt === null && recognised !== null && sameTarget(curriculum, recognised, target)
    })
    .sort((a, b) => b.recognisedAt - a.recognisedAt || (a.id < b.id ? -1 : 1))[0]

/** What was decided on the target itself, without what a higher level implies. */
function ownHold(curriculum: Curriculum, record: DiverRecord, target: TargetKey): TargetHold {
  const decision = decisionsOn(curriculum, record, target).findLast(({ outcome }) => outcome !== 'return')
  const recognition = recognitionOf(curriculum, record, target)
  if (decision && decision.outcome !== 'withdraw') return { kind: 'approved', decision, waivesAge: decision.waivesAge }
  if (recognition && (!decision || recognition.recognisedAt > decision.decidedAt))
    return { kind: 'recognised', recognition }
  return decision ? { kind: 'withdrawn', decision } : { kind: 'none' }
}

/**
 * What holds of a target that the edition knows by this key. A level implies those below it: one that was never
 * decided by itself is held with the nearest higher one, so that a level put in between by a later edition takes
 * nothing away. `record` is as of the date.
 */
export function targetHold(curriculum: Curriculum, record: DiverRecord, target: TargetKey): TargetHold {
  const own = ownHold(curriculum, record, target)
  if (own.kind === 'approved' || own.kind === 'withdrawn' || !target.startsWith('level:')) return own
  const index = curriculum.levelIndex(target.slice('level:'.length))
  const above = curriculum.levels.slice(index + 1).map((level) => ownHold(curriculum, record, levelTarget(level.key)))
  const approved = above.find((hold) => hold.kind === 'approved')
  if (approved) return { ...approved, waivesAge: false }
  return own.kind === 'none' ? (above.find((hold) => hold.kind === 'recognised') ?? own) : own
}

/** True when the target was approved or recognised at any time, whatever became of it. */
export const wasHeld = (curriculum: Curriculum, record: DiverRecord, target: TargetKey): boolean =>
  targetHold(curriculum, record, target).kind !== 'none' ||
  record.recognitions.some((fact) => {
    const recognised = recognisedTarget(fact)
    return recognised !== null && sameTarget(curriculum, recognised, target)
  })
