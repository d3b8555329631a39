import type { ClientBase } from 'pg'
import type { Row, Rows } from './file'

/** The owner's connection. */
export type Owner = Pick<ClientBase, 'query'>

interface TableRow {
  readonly name: string
  readonly columns: readonly string[]
  readonly key: readonly string[]
  readonly refersTo: readonly string[]
}

const catalogue = `
  SELECT c.relname AS name,
    ARRAY(SELECT a.attname::text FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
          ORDER BY a.attnum) AS columns,
    ARRAY(SELECT a.attname::text FROM pg_index i JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = ANY (i.indkey)
          WHERE i.indrelid = c.oid AND i.indisprimary ORDER BY array_position(i.indkey::int2[], a.attnum)) AS key,
    ARRAY(SELECT DISTINCT r.relname::text FROM pg_constraint f JOIN pg_class r ON r.oid = f.confrelid
          WHERE f.conrelid = c.oid AND f.contype = 'f' AND r.oid <> c.oid) AS "refersTo"
  FROM pg_class c
  WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition
    AND c.relname <> '_prisma_migrations'
  ORDER BY c.oid`

/** A table of the database: the names of its columns and of those of its primary key. */
export type Table = Pick<TableRow, 'name' | 'columns' | 'key'>

/** The product's tables, each after those it refers to, else in the order in which they were made. */
export async function listTables(owner: Owner): Promise<readonly Table[]> {
  const { rows } = await owner.query<TableRow>(catalogue)
  const ordered = new Set<TableRow>()
  const take = (table: TableRow): void => {
    if (ordered.has(table)) return
    for (const name of table.refersTo) for (const other of rows) if (other.name === name) take(other)
    ordered.add(table)
  }
  for (const table of rows) take(table)
  return [...ordered]
}

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`
export const listed = (names: readonly string[]): string => names.map(quoted).join(', ')

/** Every row of some tables as they were at one moment, in the order of their keys. */
export async function readRows(owner: Owner, tables: readonly Table[]): Promise<Rows> {
  const found = new Map<string, readonly Row[]>()
  await owner.query(`BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY; SET LOCAL TimeZone = 'UTC'`)
  for (const { name, key } of tables) {
    const text = `SELECT row_to_json(t)::text AS row FROM ${quoted(name)} t ORDER BY ${listed(key)}`
    const { rows } = await owner.query<{ row: string }>(text)
    found.set(
      name,
      rows.map(({ row }) => JSON.parse(row)),
    )
  }
  await owner.query('COMMIT')
  return found
}
