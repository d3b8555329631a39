import pg from 'pg'
import type { Demo } from './demo'
import { tellOwner } from './tell-owner'

/** A programme that a test has to itself; see make-office.ts. */
export interface Office {
  readonly programme: string
  readonly lead: string
  readonly email: string
}

/** Makes the programme, in a process of its own with the database's addresses. */
export function makeOffice(demo: Demo): Office {
  return tellOwner(demo, 'make-office')
}

/** Nobody has a role in it any more. */
export async function closeOffice(demo: Demo, office: Office): Promise<void> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    await client.query('UPDATE "Membership" SET "to" = now() WHERE "programmeId" = $1 AND "to" IS NULL', [
      office.programme,
    ])
  } finally {
    await client.end()
  }
}
