import { cookies } from 'next/headers'
import { notFound, redirect } from 'next/navigation'
import { decode, encode } from 'next-auth/jwt'
import { cache } from 'react'
import { systemClock } from '../platform/clock'
import { getWebEnv } from '../platform/env'
import type { Actor } from './actor'
import { canCoach, canDecide, canReview } from './can'
import { findActor } from './store/actors'
import { endSession, findSessionAccount, openSession, type SignIn } from './store/sessions'

/** The only file that knows next-auth: its encrypted token carries the id of a session row, and nothing else. */

const secure = () => getWebEnv().address.startsWith('https:')
const cookieName = () => (secure() ? '__Secure-plumbline.session' : 'plumbline.session')

async function sessionId(): Promise<string | null> {
  const token = (await cookies()).get(cookieName())?.value
  if (!token) return null
  const content = await decode({ token, secret: getWebEnv().authSecret }).catch(() => null)
  return typeof content?.sid === 'string' ? content.sid : null
}

/** Checks the credentials, opens a session row and gives the browser its token. */
export async function signIn(email: string, password: string): Promise<SignIn> {
  const opened = await openSession(email, password, systemClock())
  if (opened.result !== 'open') return opened
  const maxAge = Math.floor((opened.expires - systemClock()) / 1000)
  const token = await encode({ token: { sid: opened.session }, secret: getWebEnv().authSecret, maxAge })
  const store = await cookies()
  store.set(cookieName(), token, { httpOnly: true, sameSite: 'lax', secure: secure(), path: '/', maxAge })
  return opened
}

/** Ends the session row, so that the token is worth nothing anywhere, and takes it from the browser. */
export async function signOut(): Promise<void> {
  const session = await sessionId()
  if (session) await endSession(session)
  const store = await cookies()
  store.delete(cookieName())
}

/** The actor of this request, or null when nobody is signed in or the session has ended. */
export const loadActor = cache(async (): Promise<Actor | null> => {
  const session = await sessionId()
  const account = session ? await findSessionAccount(session) : null
  return session && account ? findActor(account, session, systemClock()) : null
})

/** The actor, or the sign-in page. */
export async function requireActor(): Promise<Actor> {
  return (await loadActor()) ?? redirect('/account/sign-in')
}

async function requireThat(may: (actor: Actor) => boolean): Promise<Actor> {
  const actor = await requireActor()
  // What a role may not see does not exist for it.
  return may(actor) ? actor : notFound()
}

export const requireCoach = (): Promise<Actor> => requireThat(canCoach)
export const requireHeadCoach = (): Promise<Actor> => requireThat((actor) => canDecide(actor))
export const requireReviewer = (): Promise<Actor> => requireThat(canReview)
