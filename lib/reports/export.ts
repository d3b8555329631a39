import type { TargetKey } from '../assessment/record'
import type { Curriculum } from '../curriculum/edition/curriculum'
import type { CsvCell } from './csv'
import { everybody, movesIn, waitIn } from './filter'
import { askedSteps } from './listed'
import { type OutgoingRow, outgoingTable, withheldMark } from './outgoing-table'
import { type DiverOnPathway, type Figure, figures } from './pathway'
import { type CountRow, type Grouping, levelTable, moveTable } from './tables'
import { countWaits, type Wait } from './waits'

/** What can be taken along: how divers stand to the next level or to board moves, and what the next level waits for. */
export const exportable = ['level', 'moves', 'waits'] as const
export type Exportable = (typeof exportable)[number]

/** What an export is made of: everybody in the programme, and how rows are named in it. */
export interface ExportSubject {
  readonly curriculum: Curriculum
  readonly clubs: readonly string[]
  readonly divers: readonly DiverOnPathway[]
  /** Clubs in which the reader coaches: of their divers nothing is withheld. */
  readonly own: readonly string[]
  readonly rowName: (row: Pick<CountRow, 'narrows'>) => string
  readonly moveName: (move: TargetKey) => string
  readonly waitName: (wait: Wait) => string
}

const everyone = 'all'
const levelFigures = figures.filter((figure) => figure !== 'to review')
const headOf = (held: string) => (figure: Figure) => (figure === 'held' ? held : figure)

/** Counts of lists of divers, and how many of each are of the reader's own clubs. */
function counted({ divers, own }: ExportSubject, lists: readonly (readonly string[])[]) {
  const mine = new Set(divers.filter(({ club }) => own.includes(club)).map(({ id }) => id))
  return {
    counts: lists.map((list) => list.length),
    own: lists.map((list) => list.filter((id) => mine.has(id)).length),
  }
}

function outgoing(subject: ExportSubject, row: CountRow, columns: readonly Figure[]): OutgoingRow {
  const { club } = row.narrows
  return {
    label: Object.keys(row.narrows).length === 0 ? everyone : subject.rowName(row),
    ...counted(
      subject,
      columns.map((figure) => row.figures.get(figure) ?? []),
    ),
    ownClub: typeof club === 'string' && subject.own.includes(club),
  }
}

/**
 * The lines of an export, its heads first: the whole programme always, for two choices laid side by side could tell what each
 * withholds. Each table adds up to the same totals, in which what is withheld depends on the totals alone.
 */
export function exportLines(subject: ExportSubject, of: Exportable, by: Grouping): CsvCell[][] {
  const whole = { ...subject, filter: everybody }
  const rowHead = by === 'step' ? 'of' : by
  if (of === 'level') {
    const rows = levelTable(whole, by).map((row) => outgoing(subject, row, levelFigures))
    const heads = [by === 'step' ? 'level held' : by, ...levelFigures.map(headOf('has them all')), 'divers']
    return [heads, ...outgoingTable(rows, everyone)]
  }
  if (of === 'moves') {
    const lines = movesIn(subject.curriculum, everybody).flatMap((move) => {
      const rows = moveTable(whole, [move], by).map((row) => outgoing(subject, row, figures))
      // By itself the one row for everybody is its own total.
      const table = outgoingTable(rows, everyone).slice(by === 'step' ? -1 : 0)
      return table.map((line) => [subject.moveName(move), ...line])
    })
    return [['board move', rowHead, ...figures.map(headOf('moved')), 'divers'], ...lines]
  }
  return [['waited for', 'held up', 'waiting, not held up', 'divers'], ...waitLines(subject)]
}

/** What fewer than five wait for is left out, and the rest stands by name: an order by number would tell what is withheld. */
function waitLines(subject: ExportSubject): CsvCell[][] {
  const { curriculum, divers, waitName } = subject
  return countWaits(askedSteps(divers, null), (what) => waitIn(curriculum, everybody, what))
    .flatMap((wait) => {
      const others = wait.divers.filter((id) => !wait.heldUp.includes(id))
      const row = { label: waitName(wait), ...counted(subject, [wait.heldUp, others]), ownClub: false }
      return outgoingTable([row], everyone).slice(0, 1)
    })
    .filter((line) => line.at(-1) !== withheldMark)
    .sort((a, b) => String(a[0]).localeCompare(String(b[0])))
}
