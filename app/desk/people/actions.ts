'use server'

import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canDecide } from '@/lib/access/can'
import { invitationDays, mayInvite, type Offer } from '@/lib/access/invite'
import { coachingScopeOf, scopeOf } from '@/lib/access/scope'
import { makeInvitation, withdrawInvitation } from '@/lib/access/store/invitations'
import { recordVenue } from '@/lib/assessment/store/venue'
import { systemClock } from '@/lib/platform/clock'
import { getWebEnv } from '@/lib/platform/env'

const inviting = z.object({
  role: z.enum(['assistant', 'head', 'reviewer', 'lead']),
  club: z.uuid().optional(),
  label: z.string().trim().min(1, { error: 'Write for whom the link is, so that you can tell it later.' }).max(80),
})

const invite = gatedForm(inviting, async ({ role, club, label }, actor, form): Promise<FormState> => {
  const offer = { role, club: club ?? null } as Offer
  if (!mayInvite(actor, offer)) return refuse(form, 'This is not yours to give.')
  const now = systemClock()
  const { token } = await makeInvitation(scopeOf(actor, now), offer, label, now)
  revalidatePath('/', 'layout')
  return {
    done: true,
    message: `Send this link to ${label}. It works once, for ${invitationDays} days, and is shown only now.`,
    made: `${getWebEnv().address}/account/invited/${token}`,
  }
})

/** Makes an invitation and shows its link, this once. */
export async function inviteAction(previous: FormState, form: FormData): Promise<FormState> {
  return invite(previous, form)
}

const withdraw = gatedForm(z.object({ invitation: z.uuid() }), async ({ invitation }, actor, form) => {
  const now = systemClock()
  if (!(await withdrawInvitation(scopeOf(actor, now), invitation, now)))
    return refuse(form, 'It was used or taken back before.')
  revalidatePath('/', 'layout')
  return { done: true, message: 'Taken back: the link opens nothing any more.' }
})

/** Takes an invitation back. */
export async function withdrawAction(previous: FormState, form: FormData): Promise<FormState> {
  return withdraw(previous, form)
}

const venue = z.object({ club: z.uuid(), has: z.enum(['yes', 'no'], { error: 'Say yes or no.' }) })

const record = gatedForm(venue, async ({ club, has }, actor, form) => {
  if (!canDecide(actor, club)) return refuse(form, 'Only the head coach says which boards the club has.')
  await recordVenue(coachingScopeOf(actor, systemClock()), club, 'board-3m', has === 'yes')
  redirect(`/desk/people?club=${club}&done=venue`)
})

/** Records whether the club has a 3 m board. */
export async function venueAction(previous: FormState, form: FormData): Promise<FormState> {
  return record(previous, form)
}
