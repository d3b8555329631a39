import pg from 'pg'
import { inject } from 'vitest'
import type { DatabaseUrls } from '../../scripts/database/own-cluster'

/** This worker's number is new for each test file, so each has a database to itself and cleans nothing up. */
const ownName = (): string => `file_${process.env.VITEST_POOL_ID}_${process.env.VITEST_WORKER_ID}`

function addresses(database: string): DatabaseUrls {
  const template = inject('template')
  const named = (url: string) => {
    const address = new URL(url)
    address.pathname = `/${database}`
    return address.href
  }
  return { owner: named(template.owner), app: named(template.app), superuser: named(template.superuser) }
}

/** The addresses of this test file's database: as the owner, the application role, and the superuser. */
export const databaseUrls = (): DatabaseUrls => addresses(ownName())

/** Speaks SQL to this file's database as one of its roles, on a connection of its own. */
export async function asRole<T>(role: keyof DatabaseUrls, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: databaseUrls()[role] })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

async function asAdmin(statements: readonly string[]): Promise<void> {
  const admin = new pg.Client({ connectionString: addresses('postgres').superuser })
  await admin.connect()
  try {
    for (const statement of statements) await admin.query(statement)
  } finally {
    await admin.end()
  }
}

/** A fresh copy of the migrated template under a name; drops the one that was there. */
export const createDatabase = (name: string): Promise<void> =>
  asAdmin([
    `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`,
    `CREATE DATABASE ${name} TEMPLATE template_plumbline OWNER app_owner`,
    `REVOKE ALL ON DATABASE ${name} FROM PUBLIC`,
    `GRANT CONNECT ON DATABASE ${name} TO app_user`,
  ])

export const dropDatabase = (name: string): Promise<void> => asAdmin([`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`])

/** This file's database, empty again: for a test that needs a clean slate. */
export const resetDatabase = (): Promise<void> => createDatabase(ownName())

/** At the end of the file. */
export const removeDatabase = (): Promise<void> => dropDatabase(ownName())
