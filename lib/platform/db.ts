import { PrismaPg } from '@prisma/adapter-pg'
import { Pool } from 'pg'
import { Prisma, PrismaClient } from '../../generated/prisma/client'
import { getEnv } from './env'

/** One open transaction. The bare client never leaves this file: without an account the policies admit no row. */
export type Tx = Prisma.TransactionClient

interface Limits {
  /** Milliseconds the whole transaction may take. */
  readonly timeout?: number
}

interface Connection {
  readonly pool: Pool
  readonly client: PrismaClient
}

let connection: Connection | undefined

function open(connectionString: string): Connection {
  const pool = new Pool({ connectionString, max: 10 })
  // A server that goes away while a connection idles is noticed by the next query, not by a crash.
  pool.on('error', () => undefined)
  return { pool, client: new PrismaClient({ adapter: new PrismaPg(pool) }) }
}

function connect(): Connection {
  connection ??= open(getEnv().databaseAppUrl)
  return connection
}

/** For commands at the console: from now on this process speaks to the database as its owner, who sees every row. */
export function connectAsOwner(): void {
  const url = getEnv().databaseOwnerUrl
  if (!url) throw new Error('DATABASE_URL, the owner\u2019s address of the database, is not set')
  connection = open(url)
}

/**
 * The one way to the rows: a transaction in which row-level security sees `account`. One a page or action.
 * Everything inside goes through `tx`; an error rolls everything back.
 */
export function asAccount<T>(account: string, work: (tx: Tx) => Promise<T>, limits: Limits = {}): Promise<T> {
  return connect().client.$transaction(
    async (tx) => {
      await tx.$executeRaw`SELECT set_config('app.account_id', ${account}, true)`
      return work(tx)
    },
    { maxWait: 10_000, timeout: limits.timeout ?? 15_000 },
  )
}

/** A transaction before anybody is known: only the functions made for signing in answer there. */
export function beforeSignIn<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
  return connect().client.$transaction(work, { maxWait: 10_000 })
}

/** The pool behind the rate limiter, which speaks to its own table only. */
export const limiterPool = (): Pool => connect().pool

/** Throws when the database does not answer the application role. */
export async function pingDatabase(): Promise<void> {
  await connect().pool.query('SELECT 1')
}

/** For scripts and tests that must end; the web process keeps its pool. */
export async function closeDatabase(): Promise<void> {
  const open = connection
  connection = undefined
  await open?.client.$disconnect()
  await open?.pool.end().catch(() => undefined)
}

/**
 * Whether the database refused a row for what is in it, so that the same row will never be taken: a value that does not fit, or a
 * violated key or check (SQLSTATE classes 22 and 23). A policy, a time-out or a lost connection is no such reason.
 */
export function isRowRefused(error: unknown): boolean {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return false
  const raised = error.meta?.driverAdapterError
  const cause = raised instanceof Error ? raised.cause : null
  const state = typeof cause === 'object' && cause && 'originalCode' in cause ? cause.originalCode : null
  return typeof state === 'string' && /^2[23]/.test(state)
}

/** True for a violated unique key, and for a row that a policy refused to write. */
export function databaseCode(error: unknown): string | null {
  if (error instanceof Prisma.PrismaClientKnownRequestError) return error.code
  return null
}
