'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, parseForm, refuse } from '@/lib/access/action'
import { refuseAcceptance } from '@/lib/access/invite'
import { invitedScopeOf } from '@/lib/access/scope'
import { signIn } from '@/lib/access/session'
import { prepareAccount } from '@/lib/access/store/accounts'
import { findInvitation } from '@/lib/access/store/invitations'
import { acceptInvitation } from '@/lib/assessment/store/posts'
import { systemClock } from '@/lib/platform/clock'

const closed = 'This link opens nothing any more: it was used, was taken back, or has run out. Ask for another.'

const joining = z
  .object({
    token: z.string().max(100),
    name: z.string().trim().min(1, { error: 'Write your name, as it will stand beside what you sign.' }).max(80),
    initials: z
      .string()
      .trim()
      .regex(/^\p{L}{2,4}$/u, { error: 'Two to four letters, as they stand in a list of attempts.' }),
    email: z.email({ error: 'Write the whole address, such as name@club.example.' }),
    password: z.string().min(12, { error: 'At least twelve characters; a sentence is easy to remember.' }).max(200),
    again: z.string(),
  })
  .refine((input) => input.password === input.again, { path: ['again'], error: 'The two passwords differ.' })

function withoutPasswords(state: FormState): FormState {
  const { password: _, again: __, ...values } = state.values ?? {}
  return { ...state, values }
}

/** Makes the account that a newcomer chose, gives it the post, and signs it in. */
export async function joinAction(_previous: FormState, form: FormData): Promise<FormState> {
  const parsed = parseForm(joining, form)
  if (!parsed.ok) return withoutPasswords(parsed.state)
  const { token, again: _, ...words } = parsed.input
  const found = await findInvitation(token)
  if (!found) return withoutPasswords(refuse(form, closed))
  const newcomer = await prepareAccount({ ...words, initials: words.initials.toUpperCase() })
  const outcome = await acceptInvitation(
    invitedScopeOf(newcomer.id, found.programme, systemClock()),
    found.hash,
    newcomer,
  )
  if (!outcome.ok && outcome.because === 'address taken') {
    const message = 'There is an account with this address: sign in with it, then open the link again.'
    return withoutPasswords(refuse(form, message, { email: message }))
  }
  if (!outcome.ok) return withoutPasswords(refuse(form, closed))
  const opened = await signIn(words.email, words.password)
  redirect(opened.result === 'open' ? '/' : '/account/sign-in')
}

const accept = gatedForm(z.object({ token: z.string().max(100) }), async ({ token }, actor, form) => {
  const found = await findInvitation(token)
  if (!found) return refuse(form, closed)
  const refusal = refuseAcceptance(actor, found.offer, found.programme.id)
  if (refusal) return refuse(form, refusal)
  const outcome = await acceptInvitation(
    invitedScopeOf(actor.account, found.programme, systemClock()),
    found.hash,
    null,
  )
  if (!outcome.ok) return refuse(form, closed)
  redirect('/')
})

/** Gives the post to the account that is signed in. */
export async function acceptAction(previous: FormState, form: FormData): Promise<FormState> {
  return accept(previous, form)
}
