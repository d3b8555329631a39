import { hashPassword } from '../../../lib/access/store/password'
import { workOutDigests } from './digests'
import type { Row, Rows } from './file'
import { ledgerColumns } from './kept'
import { listed, listTables, type Owner, quoted, type Table } from './tables'

/** What is of this installation. */
export interface Own {
  readonly password: string
  /** Milliseconds that the demo's clock stands from the system's. */
  readonly clockOffset: number
}

/** A text of JSON is held in memory by both sides: so many rows at a time. */
const atOnce = 5_000

const pieces = (rows: readonly Row[]): (readonly Row[])[] =>
  Array.from({ length: Math.ceil(rows.length / atOnce) }, (_, index) =>
    rows.slice(index * atOnce, (index + 1) * atOnce),
  )

/** Inserts by the names of the columns: a column that came later has its default. Every trigger and check does its work. */
async function insert(owner: Owner, { name }: Table, rows: readonly Row[]): Promise<void> {
  const columns = listed(Object.keys(rows[0] ?? {}))
  const text = `INSERT INTO ${quoted(name)} (${columns}) SELECT ${columns} FROM json_populate_recordset(NULL::${quoted(name)}, $1)`
  for (const piece of pieces(rows)) await owner.query(text, [JSON.stringify(piece)])
}

/** Appends through the ledger's one door, which numbers and hashes each entry. Throws Error for a number that is not the kept one. */
async function append(owner: Owner, rows: readonly Row[]): Promise<void> {
  const [programme, seq, ...rest] = ledgerColumns
  const text = `SELECT e.${quoted(seq ?? '')} AS wanted, append_ledger(e.${quoted(programme ?? '')}, ${rest.map((name) => `e.${quoted(name)}`).join(', ')}) AS got
    FROM (SELECT * FROM json_populate_recordset(NULL::"Ledger", $1) ORDER BY "seq") e`
  for (const piece of pieces(rows)) {
    const { rows: numbers } = await owner.query<{ wanted: string; got: string }>(text, [JSON.stringify(piece)])
    const wrong = numbers.find(({ wanted, got }) => wanted !== got)
    if (wrong) throw new Error(`entry ${wrong.wanted} of the ledger would be number ${wrong.got}`)
  }
}

/** The rows with what is this installation's own. */
async function withOwn(rows: Rows, { password, clockOffset }: Own): Promise<Rows> {
  const accounts = (rows.get('Account') ?? []).map(async (row) => ({
    ...row,
    passwordHash: await hashPassword(password),
  }))
  const programmes = (rows.get('Programme') ?? []).map((row) => ({ ...row, clockOffsetMs: clockOffset }))
  return new Map([...rows, ['Account', await Promise.all(accounts)], ['Programme', programmes]])
}

/**
 * Loads the prepared rows into an empty database, all or nothing, as its owner and with nothing switched off: foreign keys,
 * checks and triggers take each row in as they take any other. Throws Error at the first thing they refuse.
 */
export async function loadRows(owner: Owner, prepared: Rows, own: Own): Promise<void> {
  const rows = await withOwn(workOutDigests(prepared), own)
  await owner.query(`BEGIN; SET LOCAL TimeZone = 'UTC'`)
  try {
    const tables = await listTables(owner)
    const unknown = [...rows.keys()].filter((name) => !tables.some((table) => table.name === name))
    if (unknown.length > 0) throw new Error(`the database has no table ${unknown.join(', ')}`)
    for (const table of tables) {
      const list = rows.get(table.name) ?? []
      if (list.length === 0) continue
      try {
        await (table.name === 'Ledger' ? append(owner, list) : insert(owner, table, list))
      } catch (error) {
        throw new Error(`${table.name}: ${error instanceof Error ? error.message : String(error)}`)
      }
    }
    await owner.query('COMMIT')
  } catch (error) {
    await owner.query('ROLLBACK')
    throw error
  }
  // Nothing has been counted yet, and the first pages are to be planned well.
  await owner.query(`ANALYZE ${listed([...rows.keys()])}`)
}
