import type { AttemptItem, CallItem, ObservationItem } from '../../../lib/assessment/deck/contract'
import { commitTo, digestOf } from '../../../lib/assessment/ledger/write-event'
import type { Row, Rows } from './file'

/**
 * Digests and commitments are half of what the rows would take, and follow from the rest: they are left out where they do,
 * column by column and row by row, and worked out again when the rows are loaded.
 */

const text = (row: Row, column: string): string => String(row[column])
const instant = (row: Row, column: string): number => Date.parse(text(row, column))

/** Rows of a table by a column. */
function byColumn(rows: Rows, table: string, column: string): ReadonlyMap<unknown, readonly Row[]> {
  const groups = new Map<unknown, Row[]>()
  for (const row of rows.get(table) ?? []) {
    const group = groups.get(row[column])
    if (group) group.push(row)
    else groups.set(row[column], [row])
  }
  return groups
}

const commitmentOf = ({ link, startMs, endMs, text: words, salt }: Row): string | null =>
  typeof salt !== 'string' ? null : commitTo(words === undefined ? `${link}#${startMs},${endMs}` : String(words), salt)

const dived = (row: Row) => ({
  id: text(row, 'id'),
  diver: text(row, 'diverId'),
  skill: text(row, 'skill'),
  place: row.place as CallItem['place'],
  atLevel: text(row, 'atLevel'),
  device: text(row, 'deviceId'),
})

const callOf = (row: Row): CallItem => ({
  kind: 'call',
  ...dived(row),
  count: Number(row.count),
  calledAt: instant(row, 'calledAt'),
})

const attemptOf = (row: Row): AttemptItem => ({
  kind: 'attempt',
  ...dived(row),
  call: row.callId === null ? null : { id: text(row, 'callId'), number: Number(row.callNumber) },
  attemptedAt: instant(row, 'attemptedAt'),
  setting: row.setting as AttemptItem['setting'],
  cued: row.cued === true,
})

const seconds = (ms: unknown): number => Number(ms) / 1000

/** What the deck sent of an observation, from its row and those of its words and moments. */
function observationOf(row: Row, said: (id: unknown) => string | null, moments: readonly Row[]): ObservationItem {
  return {
    kind: 'observation',
    id: text(row, 'id'),
    attempt: text(row, 'attemptId'),
    edition: text(row, 'editionHash'),
    observedOn: row.observedOn as ObservationItem['observedOn'],
    observedAt: instant(row, 'observedAt'),
    ratings: row.ratings as ObservationItem['ratings'],
    restAsExpected: row.restAsExpected === true,
    faults: row.faults as string[],
    note: said(row.noteId),
    moments: moments.map(({ id, link, startMs, endMs }) => ({
      ...{ id: String(id), link: String(link), start: seconds(startMs), end: endMs === null ? null : seconds(endMs) },
    })),
    supersedes: row.supersedesId === null ? null : { id: text(row, 'supersedesId'), reason: said(row.reasonId) ?? '' },
  }
}

type Work = Readonly<Record<string, (row: Row) => string | null>>

/** How each column that follows from others is worked out, by table. The write path does the same, and the tests compare. */
function workOf(rows: Rows): Readonly<Record<string, Work>> {
  const words = byColumn(rows, 'Words', 'id')
  const moments = byColumn(rows, 'Moment', 'observationId')
  const said = (column: string) => (id: unknown) => (words.get(id)?.[0]?.[column] as string | undefined) ?? null
  const sent = (row: Row) => observationOf(row, said('text'), moments.get(row.id) ?? [])
  const committed = (id: unknown) => {
    const [row] = words.get(id) ?? []
    return row ? commitmentOf(row) : null
  }
  return {
    Words: { commitment: commitmentOf },
    Moment: { commitment: commitmentOf },
    Call: { contentDigest: (row) => digestOf(callOf(row)) },
    Attempt: { contentDigest: (row) => digestOf(attemptOf(row)) },
    Observation: {
      contentDigest: (row) => digestOf(sent(row)),
      digest: (row) => {
        const { supersedes, ...item } = sent(row)
        return digestOf({
          ...item,
          note: committed(row.noteId),
          supersedes: supersedes && { id: supersedes.id, reason: committed(row.reasonId) },
          moments: (moments.get(row.id) ?? []).map(commitmentOf),
          coach: row.coachId,
        })
      },
    },
  }
}

const mapColumns = (rows: Rows, change: (value: unknown, worked: () => string | null) => unknown): Rows => {
  const work = workOf(rows)
  return new Map(
    [...rows].map(([table, list]) => {
      const columns = Object.entries(work[table] ?? {})
      const changed = (row: Row) => columns.map(([name, of]) => [name, change(row[name], () => of(row))])
      return [table, columns.length === 0 ? list : list.map((row) => ({ ...row, ...Object.fromEntries(changed(row)) }))]
    }),
  )
}

/** The rows with null in place of each digest that follows from them. */
export const leaveOutDigests = (rows: Rows): Rows =>
  mapColumns(rows, (value, worked) => (value === worked() ? null : value))

/** The rows as they were before `leaveOutDigests`. */
export const workOutDigests = (rows: Rows): Rows => mapColumns(rows, (value, worked) => value ?? worked())
