import pg from 'pg'
import type { Demo } from './demo'

/** The clip numbers that the server has of a diver's filmed attempts, in the order in which they were marked. */
export async function listFilmed(demo: Demo, diver: string): Promise<number[]> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    const { rows } = await client.query<{ clip: number }>(
      'SELECT "clip" FROM "FilmedAttempt" WHERE "diverId" = $1 ORDER BY "attemptId"',
      [diver],
    )
    return rows.map(({ clip }) => clip)
  } finally {
    await client.end()
  }
}
