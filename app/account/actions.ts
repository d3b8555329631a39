'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { nameHolder } from '@/app/api/deck/holder'
import { type FormState, parseForm, refuse } from '@/lib/access/action'
import { signIn, signOut } from '@/lib/access/session'

const credentials = z.object({
  email: z.email({ error: 'Write the whole address, such as name@club.example.' }),
  password: z.string().min(1, { error: 'The password is missing.' }),
  next: z.string().optional(),
})

/** Only a path of this site: a link must not send somebody elsewhere with a fresh session. */
const safePath = (next: string | undefined): string => (next && /^\/(?![/\\])/.test(next) ? next : '/')

export async function signInAction(_previous: FormState, form: FormData): Promise<FormState> {
  const parsed = parseForm(credentials, form)
  if (!parsed.ok) return withoutPassword({ ...parsed.state, message: 'Please mend what is marked below.' })
  const { email, password, next } = parsed.input
  const answer = await signIn(email, password)
  if (answer.result === 'open') {
    await nameHolder(answer.account)
    redirect(safePath(next))
  }
  const message =
    answer.result === 'too many tries'
      ? `Too many tries for this address. Wait ${Math.ceil(answer.waitSeconds / 60)} minutes, then try again.`
      : 'The address and the password do not fit together. Check both and try again.'
  return withoutPassword(refuse(form, message))
}

function withoutPassword(state: FormState): FormState {
  const { password: _, ...values } = state.values ?? {}
  return { ...state, values }
}

export async function signOutAction(): Promise<void> {
  await signOut()
  await nameHolder(null)
  redirect('/account/sign-in')
}
