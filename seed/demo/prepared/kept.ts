import { leaveOutDigests } from './digests'
import type { Row, Rows } from './file'
import { listTables, type Owner, readRows } from './tables'

/** Tables that fill by themselves: triggers and `append_ledger` keep the first two, whoever signs in the others. */
const byThemselves = ['ObservationHead', 'LedgerHead', 'Session', 'SignInRate']

/** Columns that are an installation's own, or that the loading has from elsewhere. */
export const notKept: Readonly<Record<string, readonly string[]>> = {
  Account: ['passwordHash'],
  Programme: ['clockOffsetMs'],
}

/** The ledger goes in by its one door, which takes this and gives the rest. */
export const ledgerColumns = ['programmeId', 'seq', 'kind', 'schemaVersion', 'payload', 'at']

function isKept(table: string, column: string): boolean {
  if (table === 'Ledger') return ledgerColumns.includes(column)
  return !notKept[table]?.includes(column)
}

const without = (table: string, row: Row): Row =>
  Object.fromEntries(Object.entries(row).filter(([column]) => isKept(table, column)))

/** What the prepared demo keeps of a database that holds nothing but the demo. */
export async function readKept(owner: Owner): Promise<Rows> {
  const tables = await listTables(owner)
  const rows = await readRows(
    owner,
    tables.filter(({ name }) => !byThemselves.includes(name)),
  )
  return leaveOutDigests(new Map([...rows].map(([table, list]) => [table, list.map((row) => without(table, row))])))
}
