import type { StandingRow } from '../assessment/readiness/standing-row'
import type { Standing } from '../assessment/readiness/target-standing'
import type { TargetKey } from '../assessment/record'
import { levelTarget, moveTarget } from '../assessment/target-hold'
import type { Curriculum } from '../curriculum/edition/curriculum'

/** Where a diver stands on the pathway: the level she holds (index, −1 none) and her standing to the next; and to each move. */
export interface DiverOnPathway {
  readonly id: string
  readonly club: string
  readonly level: number
  /** The next level's standing; 'held' when she holds them all. */
  readonly next: Standing
  readonly moves: ReadonlyMap<TargetKey, Standing>
}

/** Places one diver on the pathway. The level she holds is the highest approved, recognised or to review. */
export function placeDiver(
  curriculum: Curriculum,
  diver: {
    readonly id: string
    readonly club: string
    readonly rows: readonly Pick<StandingRow, 'target' | 'held' | 'standing'>[]
  },
): DiverOnPathway {
  const { id, club } = diver
  const rows = new Map<TargetKey, (typeof diver.rows)[number]>(diver.rows.map((row) => [row.target, row]))
  const standing = (target: TargetKey): Standing => rows.get(target)?.standing ?? 'on the way'
  const level = curriculum.levels.findLastIndex(({ key }) => (rows.get(levelTarget(key))?.held ?? 'no') !== 'no')
  const next = curriculum.levels[level + 1]
  return {
    id,
    club,
    level,
    next: next ? standing(levelTarget(next.key)) : 'held',
    moves: new Map(curriculum.boardMoves.map((move) => [moveTarget(move), standing(moveTarget(move))])),
  }
}

/** A figure of the pipeline: what it counts, and whom. The number is the length of the list, and nothing else. */
export interface Figure {
  readonly figure: string
  readonly divers: readonly string[]
}

/** One row of either table: a club at a step, with its figures. */
export interface PipelineRow {
  readonly club: string
  /** Level key held, 'none', or the target of a board move. */
  readonly step: string
  readonly figures: readonly Figure[]
}

/** Figures of the table by level held. */
export const levelFigures = ['divers', 'ready', 'near', 'held up', 'stood down'] as const
/** Figures of the table by board move; every diver stands in exactly one. */
export const moveFigures = ['not yet', 'near', 'ready', 'moved'] as const

const listOf = (divers: readonly DiverOnPathway[], belongs: (diver: DiverOnPathway) => boolean): string[] =>
  divers.filter(belongs).map(({ id }) => id)

/** Club × level held (none first): divers there, and how they stand to the next level. */
export function levelRows(
  curriculum: Curriculum,
  clubs: readonly string[],
  divers: readonly DiverOnPathway[],
): PipelineRow[] {
  const steps = ['none', ...curriculum.levels.map((level) => level.key)]
  return clubs.flatMap((club) =>
    steps.map((step, index): PipelineRow => {
      const here = divers.filter((diver) => diver.club === club && diver.level === index - 1)
      return {
        club,
        step,
        figures: levelFigures.map((figure) => ({
          figure,
          divers: listOf(here, (diver) => figure === 'divers' || diver.next === figure),
        })),
      }
    }),
  )
}

/** What a standing counts as in the table of a board move: who is not near, ready or moved is not there yet. */
const moveFigure = (standing: Standing | undefined): (typeof moveFigures)[number] =>
  standing === 'held' ? 'moved' : standing === 'ready' || standing === 'near' ? standing : 'not yet'

/** Club × board move: every diver stands in exactly one figure. */
export function moveRows(
  curriculum: Curriculum,
  clubs: readonly string[],
  divers: readonly DiverOnPathway[],
): PipelineRow[] {
  return clubs.flatMap((club) =>
    curriculum.boardMoves.map(moveTarget).map((target): PipelineRow => {
      const here = divers.filter((diver) => diver.club === club)
      return {
        club,
        step: target,
        figures: moveFigures.map((figure) => ({
          figure,
          divers: listOf(here, (diver) => moveFigure(diver.moves.get(target)) === figure),
        })),
      }
    }),
  )
}
