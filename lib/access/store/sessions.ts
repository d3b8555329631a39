import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible'
import { v7 as uuidv7 } from 'uuid'
import { beforeSignIn, limiterPool } from '../../platform/db'
import { passwordFits } from './password'

const sessionLength = 14 * 86_400_000
const tries = { points: 10, duration: 15 * 60 }

let limiter: RateLimiterPostgres | undefined
const getLimiter = (): RateLimiterPostgres => {
  limiter ??= new RateLimiterPostgres({
    storeClient: limiterPool(),
    tableName: 'SignInRate',
    keyPrefix: 'sign-in',
    tableCreated: true,
    clearExpiredByTimeout: false,
    ...tries,
  })
  return limiter
}

export type SignIn =
  | { readonly result: 'open'; readonly session: string; readonly account: string; readonly expires: number }
  | { readonly result: 'refused' }
  | { readonly result: 'too many tries'; readonly waitSeconds: number }

/** Checks address and password and opens a session row. Ten tries in a quarter of an hour for an address. */
export async function openSession(email: string, password: string, systemNow: number): Promise<SignIn> {
  const address = email.trim().toLowerCase()
  try {
    await getLimiter().consume(address)
  } catch (refusal) {
    if (!(refusal instanceof RateLimiterRes)) throw refusal
    return { result: 'too many tries', waitSeconds: Math.ceil(refusal.msBeforeNext / 1000) }
  }
  const found = await beforeSignIn(
    (tx) => tx.$queryRaw<{ id: string; passwordHash: string }[]>`SELECT * FROM sign_in_lookup(${address})`,
  )
  const account = found[0]
  if (!(await passwordFits(password, account?.passwordHash ?? null)) || !account) return { result: 'refused' }
  const session = uuidv7()
  const expires = systemNow + sessionLength
  await beforeSignIn(
    (tx) => tx.$executeRaw`SELECT open_session(${session}::uuid, ${account.id}::uuid, ${new Date(expires)})`,
  )
  await getLimiter().delete(address)
  return { result: 'open', session, account: account.id, expires }
}

/** The account of a live session, or null when it has ended, run out or never was. */
export async function findSessionAccount(session: string): Promise<string | null> {
  const rows = await beforeSignIn(
    (tx) => tx.$queryRaw<{ account: string | null }[]>`SELECT session_account(${session}::uuid) AS account`,
  )
  return rows[0]?.account ?? null
}

/** Ends a session everywhere. Ending it twice changes nothing. */
export async function endSession(session: string): Promise<void> {
  await beforeSignIn((tx) => tx.$executeRaw`SELECT end_session(${session}::uuid)`)
}

export interface DemoSignIn {
  readonly email: string
  readonly name: string
  readonly roles: string
}

/** The demo's sign-ins, in the order in which they were made; empty unless the programme is marked as the demo. */
export const listDemoSignIns = (): Promise<DemoSignIn[]> =>
  beforeSignIn((tx) => tx.$queryRaw<DemoSignIn[]>`SELECT * FROM demo_sign_ins()`)
