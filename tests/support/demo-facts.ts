import { asRole } from './database'

/** Milliseconds by which the demo's clock stands apart from this one. */
export async function clockOffset(): Promise<number> {
  const { rows } = await asRole('owner', (client) =>
    client.query<{ offset: string }>('SELECT "clockOffsetMs" AS offset FROM "Programme" WHERE "isDemo"'),
  )
  return Number(rows[0]?.offset)
}

/** Rows of what stands after FROM, as the owner sees them. */
export const count = async (what: string): Promise<number> => {
  const { rows } = await asRole('owner', (client) => client.query<{ n: string }>(`SELECT count(*) AS n FROM ${what}`))
  return Number(rows[0]?.n)
}
