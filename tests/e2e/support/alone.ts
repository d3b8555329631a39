import pg from 'pg'
import type { Demo } from './demo'

// Nothing else in the demo's database takes a lock of this number.
const lock = 20_260

/**
 * Runs `work` while no test that is to run alone does, or, `alone`, while no other test does: a lock of the database, which every
 * worker reaches, and which is free again when a worker dies. Whoever waits to be alone comes before all who ask later.
 */
export async function holdTurn(demo: Demo, alone: boolean, work: () => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    await client.query(`SELECT ${alone ? 'pg_advisory_lock' : 'pg_advisory_lock_shared'}($1)`, [lock])
    await work()
  } finally {
    await client.end()
  }
}
