import { execFileSync } from 'node:child_process'
import pg from 'pg'
import type { Demo } from './demo'

/** A programme that a test has to itself; see make-office.ts. */
export interface Office {
  readonly programme: string
  readonly lead: string
  readonly email: string
}

/** Makes the programme, in a process of its own with the database's addresses. */
export function makeOffice(demo: Demo): Office {
  const told = execFileSync(process.execPath, ['--import', 'tsx', 'tests/e2e/support/make-office.ts'], {
    encoding: 'utf8',
    env: {
      ...process.env,
      DATABASE_URL: demo.database.owner,
      DATABASE_APP_URL: demo.database.app,
      PLUMBLINE_DEMO_PASSWORD: demo.password,
    },
  })
  return JSON.parse(told)
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
