import { phasesOf } from '@/lib/curriculum/edition/attach'
import type { Curriculum, Pair } from '@/lib/curriculum/edition/curriculum'
import { type FaultAt, faultsAt } from '@/lib/curriculum/edition/fault-at'
import type { Criterion, Phase, Rating } from '@/lib/curriculum/model'

/** One criterion to rate, with what the level asks of it; 0 = nothing yet. */
export interface RatingRow {
  readonly criterion: Criterion
  readonly expected: Rating
}

export interface PhaseSheet {
  readonly phase: Phase
  /** Not critical, what the level asks first. */
  readonly rows: readonly RatingRow[]
  readonly critical: readonly RatingRow[]
  /** The most usual first. */
  readonly faults: readonly FaultAt[]
}

/** Everything that can be said of one attempt at a pair, laid out by phase, judged at one level. */
export interface RatingSheet {
  readonly phases: readonly PhaseSheet[]
  /** All rows in phase order. */
  readonly rows: readonly RatingRow[]
  readonly critical: readonly RatingRow[]
}

const byKey = <Item extends { readonly key: string }>(items: readonly Item[]): Item[] => [
  ...new Map(items.map((item) => [item.key, item])).values(),
]

/** Lays out a pair at a level key. A fault stands in its own phase where the skill has it, else with its criterion. */
export function ratingSheet(curriculum: Curriculum, pair: Pair, atLevel: string): RatingSheet {
  const level = curriculum.levelIndex(atLevel)
  const order = phasesOf(pair.skill)
  const rows = pair.criteria.map(({ criterion, expects }) => ({ criterion, expected: expects[level] ?? 0 }))
  const placed = rows.flatMap(({ criterion }) =>
    faultsAt(curriculum, pair, criterion.faults).map((fault) => ({
      fault,
      phase: order.includes(fault.phase) ? fault.phase : criterion.phase,
    })),
  )
  const phases = order.map((phase) => {
    const here = rows.filter(({ criterion }) => criterion.phase === phase)
    const plain = here.filter(({ criterion }) => !criterion.critical)
    return {
      phase,
      rows: [...plain.filter(({ expected }) => expected > 0), ...plain.filter(({ expected }) => expected === 0)],
      critical: here.filter(({ criterion }) => criterion.critical),
      faults: byKey(placed.filter((entry) => entry.phase === phase).map(({ fault }) => fault)),
    }
  })
  return { phases, rows, critical: rows.filter(({ criterion }) => criterion.critical) }
}

/** Critical criteria that were neither rated nor said to be unseen: keeping waits for them. */
export const stillToRate = (
  sheet: RatingSheet,
  draft: { readonly ratings: Readonly<Record<string, Rating>>; readonly notSeen: readonly string[] },
): readonly RatingRow[] =>
  sheet.critical.filter(
    ({ criterion }) => draft.ratings[criterion.key] === undefined && !draft.notSeen.includes(criterion.key),
  )

/** The phase to open at: where the sheet has something to mark. */
export const firstPhase = (sheet: RatingSheet): Phase | undefined =>
  (sheet.phases.find(({ rows, faults }) => rows.length > 0 || faults.length > 0) ?? sheet.phases[0])?.phase
