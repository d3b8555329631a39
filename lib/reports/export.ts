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

const outgoingRow = (
  label: string,
  lists: readonly (readonly string[])[],
  own: (divers: readonly string[]) => string[],
): OutgoingRow => ({ label, counts: lists.map((list) => list.length), own: lists.map((list) => own(list).length) })

/**
 * The lines of an export, its heads first: the whole programme always, for two choices laid side by side could tell what each
 * withholds. Each table adds up to the same totals, in which what is withheld depends on the totals alone.
 */
export function exportLines(subject: ExportSubject, of: Exportable, by: Grouping): CsvCell[][] {
  const { curriculum, clubs, divers } = subject
  const mine = new Set(divers.filter(({ club }) => subject.own.includes(club)).map(({ id }) => id))
  const own = (list: readonly string[]) => list.filter((id) => mine.has(id))
  const listsOf = (row: CountRow, columns: readonly Figure[]) => columns.map((figure) => row.figures.get(figure) ?? [])
  const whole = { curriculum, clubs, divers, filter: everybody }
  if (of === 'level') {
    const rows = levelTable(whole, by)
    const table = rows.map((row) => outgoingRow(subject.rowName(row), listsOf(row, levelFigures), own))
    return [
      [by === 'step' ? 'level held' : by, ...levelFigures.map(headOf('has them all')), 'divers'],
      ...outgoingTable(table, everyone),
    ]
  }
  if (of === 'moves') {
    const heads = ['board move', by === 'step' ? 'of' : by, ...figures.map(headOf('moved')), 'divers']
    const lines = movesIn(curriculum, everybody).flatMap((move) => {
      const rows = moveTable(whole, [move], by)
      const named = by === 'step' ? [] : rows
      const table = named.map((row) => outgoingRow(subject.rowName(row), listsOf(row, figures), own))
      const region = rows.map((row) => outgoingRow(everyone, listsOf(row, figures), own))
      const shared = by === 'step' ? outgoingTable(region, everyone).slice(-1) : outgoingTable(table, everyone)
      return shared.map((line) => [subject.moveName(move), ...line])
    })
    return [heads, ...lines]
  }
  return [['waited for', 'held up', 'waiting, not held up', 'divers'], ...waitLines(subject, own)]
}

/** What fewer than five wait for is left out, and the rest stands by name: an order by number would tell what is withheld. */
function waitLines({ curriculum, divers, waitName }: ExportSubject, own: (divers: readonly string[]) => string[]) {
  return countWaits(askedSteps(divers, null), (what) => waitIn(curriculum, everybody, what))
    .flatMap((wait) => {
      const others = wait.divers.filter((id) => !wait.heldUp.includes(id))
      return outgoingTable([outgoingRow(waitName(wait), [wait.heldUp, others], own)], everyone).slice(0, 1)
    })
    .filter((line) => line.at(-1) !== withheldMark)
    .sort((a, b) => String(a[0]).localeCompare(String(b[0])))
}
