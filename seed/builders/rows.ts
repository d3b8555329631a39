import type { ClientBase } from 'pg'

/** A connection of the owner: for rows that have no screen of their own yet. */
export type Owner = Pick<ClientBase, 'query'>

/** Inserts one row; keys are column names. */
export async function insertRow(owner: Owner, table: string, row: Readonly<Record<string, unknown>>): Promise<void> {
  const columns = Object.keys(row)
  const names = columns.map((column) => `"${column}"`).join(', ')
  const places = columns.map((_, index) => `$${index + 1}`).join(', ')
  await owner.query(`INSERT INTO "${table}" (${names}) VALUES (${places})`, Object.values(row))
}
