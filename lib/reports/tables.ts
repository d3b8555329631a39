import type { TargetKey } from '../assessment/record'
import type { Curriculum } from '../curriculum/edition/curriculum'
import { ageBands } from './age-band'
import { levelHeld, type RegionFilter } from './filter'
import { type DiverOnPathway, type Figure, figures, type Step } from './pathway'

/** What the rows of a table stand for: steps (levels held, or board moves), clubs, or ages. */
export const groupings = ['step', 'club', 'age'] as const
export type Grouping = (typeof groupings)[number]

/** Which divers of a row are counted, and how; a number is the length of its list, and nothing else. */
export interface CountRow {
  /** What the row adds to the filter: the club, level or age that it stands for. */
  readonly narrows: Partial<RegionFilter>
  /** The board move that it speaks of; null: the next level. */
  readonly move: TargetKey | null
  readonly divers: readonly string[]
  /** Every figure; each diver stands in one. */
  readonly figures: ReadonlyMap<Figure, readonly string[]>
  /** Divers of whom a level is to review; of a board move it is a figure of its own, and these are none. */
  readonly toReview: readonly string[]
}

const ids = (divers: readonly DiverOnPathway[]): string[] => divers.map(({ id }) => id)

function rowOf(
  divers: readonly DiverOnPathway[],
  narrows: CountRow['narrows'],
  move: TargetKey | null,
  stepOf: (diver: DiverOnPathway) => Step | null,
): CountRow {
  const figureOf = (diver: DiverOnPathway): Figure => stepOf(diver)?.figure ?? 'held'
  return {
    narrows,
    move,
    divers: ids(divers),
    figures: new Map(figures.map((figure) => [figure, ids(divers.filter((diver) => figureOf(diver) === figure))])),
    toReview: move === null ? ids(divers.filter(({ toReview }) => toReview)) : [],
  }
}

/** What is counted: the divers that a filter looks at, and the clubs and curriculum that give a table its rows. */
export interface TableSubject {
  readonly curriculum: Curriculum
  readonly clubs: readonly string[]
  readonly divers: readonly DiverOnPathway[]
  readonly filter: RegionFilter
}

/** What each row of a grouping looks at, without those that the filter leaves out. */
function groupsOf({ curriculum, clubs, filter }: TableSubject, by: Grouping): Partial<RegionFilter>[] {
  const all = <Name extends 'club' | 'age' | 'level'>(name: Name, values: readonly RegionFilter[Name][]) =>
    values
      .filter((value) => filter[name] === null || filter[name] === value)
      .map((value): Partial<RegionFilter> => ({ [name]: value }))
  if (by === 'club') return all('club', clubs)
  return by === 'age' ? all('age', ageBands) : all('level', ['none', ...curriculum.levels.map(({ key }) => key)])
}

const belongs = (curriculum: Curriculum, diver: DiverOnPathway, narrows: Partial<RegionFilter>): boolean =>
  (narrows.club === undefined || narrows.club === diver.club) &&
  (narrows.age === undefined || narrows.age === diver.age) &&
  (narrows.level === undefined || narrows.level === levelHeld(curriculum, diver))

/** How divers stand to their next level, by level held, club or age. Every diver is counted in one row. */
export const levelTable = (subject: TableSubject, by: Grouping): CountRow[] =>
  groupsOf(subject, by).map((narrows) =>
    rowOf(
      subject.divers.filter((diver) => belongs(subject.curriculum, diver, narrows)),
      narrows,
      null,
      (diver) => diver.next,
    ),
  )

/** How divers stand to each of the moves, all of them or by club or age. Every diver is counted once for each move. */
export const moveTable = (subject: TableSubject, moves: readonly TargetKey[], by: Grouping): CountRow[] =>
  (by === 'step' ? [{}] : groupsOf(subject, by)).flatMap((narrows) => {
    const here = subject.divers.filter((diver) => belongs(subject.curriculum, diver, narrows))
    return moves.map((move) =>
      rowOf(here, narrows, move, (diver) => diver.moves.find(({ target }) => target === move) ?? null),
    )
  })

/** The filter with what a row adds to it. */
export const narrowed = (filter: RegionFilter, { narrows }: Pick<CountRow, 'narrows'>): RegionFilter => ({
  ...filter,
  ...narrows,
})
