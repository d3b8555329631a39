import pg from 'pg'
import type { Demo } from './demo'
import { tellOwner } from './tell-owner'

/** A club that a test has to itself; see make-cove.ts. */
export interface Cove {
  readonly club: string
  readonly name: string
  readonly diver: string
  /** Accounts. */
  readonly assistant: string
  readonly head: string
  readonly emails: { readonly assistant: string; readonly head: string }
}

/** Makes the club through the real write path, in a process of its own with the database's addresses. */
export function makeCove(demo: Demo): Cove {
  return tellOwner(demo, 'make-cove')
}

/**
 * Takes the club out of everybody's sight: its diver and its coaches have no membership any more, in a few seconds, when the test's
 * own pages are closed: what they still ask for then would be refused. The record stays.
 */
export async function closeCove(demo: Demo, cove: Cove): Promise<void> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    for (const table of ['Membership', 'DiverMembership'])
      await client.query(
        `UPDATE "${table}" SET "to" = now() + interval '5 seconds' WHERE "clubId" = $1 AND "to" IS NULL`,
        [cove.club],
      )
  } finally {
    await client.end()
  }
}
