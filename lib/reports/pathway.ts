import type { StandingRow } from '../assessment/readiness/standing-row'
import type { WaitsFor } from '../assessment/readiness/waits-for'
import type { TargetKey } from '../assessment/record'
import { levelTarget, moveTarget } from '../assessment/target-hold'
import type { EpochDay } from '../assessment/time'
import type { Curriculum } from '../curriculum/edition/curriculum'
import { type AgeBand, ageBandOf } from './age-band'

/** How a diver stands to a step; each diver stands in exactly one figure of each. */
export const figures = ['ready', 'near', 'held up', 'on the way', 'stood down', 'to review', 'held'] as const
export type Figure = (typeof figures)[number]

/** A diver's standing to one level or board move, and what it waits for. */
export interface Step {
  readonly target: TargetKey
  readonly figure: Figure
  readonly waitsFor: readonly WaitsFor[]
}

/** What the roll-up reads of a diver: kept rows, never her record. */
export interface CountedDiver {
  readonly id: string
  readonly club: string
  readonly born: EpochDay | null
  readonly rows: readonly Pick<StandingRow, 'target' | 'held' | 'standing' | 'waitsFor'>[]
}

/** Where a diver stands on the pathway. */
export interface DiverOnPathway {
  readonly id: string
  readonly club: string
  readonly age: AgeBand
  /** Index of the level that she holds: the highest approved, recognised or to review; −1 none. */
  readonly level: number
  /** Whether a level that she holds is to review; it is counted beside how she stands to the next. */
  readonly toReview: boolean
  /** Her step to the level after the one that she holds; null when there is none. */
  readonly next: Step | null
  /** In the order of the edition's board moves. */
  readonly moves: readonly Step[]
}

/** What was recognised from before is held; whether it was shown here is asked of what rests on it. */
const figureOf = ({ held, standing }: CountedDiver['rows'][number]): Figure =>
  held === 'to review' ? 'to review' : held === 'no' ? standing : 'held'

/** Places one diver on the pathway. Throws RangeError when a row of the edition's targets is missing. */
export function placeDiver(curriculum: Curriculum, diver: CountedDiver, today: EpochDay): DiverOnPathway {
  const rows = new Map(diver.rows.map((row) => [row.target, row]))
  const rowOf = (target: TargetKey) => {
    const row = rows.get(target)
    if (!row) throw new RangeError(`how ${diver.id} stands to ${target} is not known`)
    return row
  }
  const step = (target: TargetKey): Step => {
    const row = rowOf(target)
    return { target, figure: figureOf(row), waitsFor: row.waitsFor }
  }
  const levels = curriculum.levels.map(({ key }) => levelTarget(key))
  const level = levels.findLastIndex((target) => rowOf(target).held !== 'no')
  const next = levels[level + 1]
  return {
    id: diver.id,
    club: diver.club,
    age: ageBandOf(diver.born, today),
    level,
    toReview: levels.some((target) => rowOf(target).held === 'to review'),
    next: next ? step(next) : null,
    moves: curriculum.boardMoves.map((move) => step(moveTarget(move))),
  }
}
