import type pg from 'pg'
import { asRole } from './database'

/** Asks as the web process does: the application role, in a transaction that names an account, or none; undone at the end. */
export const asAccountRow = <T>(account: string | null, work: (client: pg.Client) => Promise<T>): Promise<T> =>
  asRole('app', async (client) => {
    await client.query('BEGIN')
    if (account) await client.query("SELECT set_config('app.account_id', $1, true)", [account])
    try {
      return await work(client)
    } finally {
      await client.query('ROLLBACK')
    }
  })

/** How many rows of a table, among those that `where` names, an account sees. */
export const countAs = (account: string | null, table: string, where = 'true', values: unknown[] = []) =>
  asAccountRow(account, async (client) =>
    Number((await client.query(`SELECT count(*) FROM "${table}" WHERE ${where}`, values)).rows[0].count),
  )
