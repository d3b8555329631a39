'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { leaveClub, proposeTransfer } from '@/lib/access/store/transfers'
import { systemClock } from '@/lib/platform/clock'
import { loadHeadedDiver } from '../particulars/loader'
import { loadMoving } from './loader'

const proposing = z.object({ diver: z.uuid(), to: z.uuid({ error: 'Choose the club.' }) })

const propose = gatedForm(proposing, async ({ diver, to }, _actor, form): Promise<FormState> => {
  const { others } = await loadMoving(diver)
  const { scope, club, name } = await loadHeadedDiver(diver)
  if (!others.some(({ id }) => id === to)) return refuse(form, 'Mend the club.', { to: 'Choose another club.' })
  const sides = { fromClub: club, toClub: to, proposedFor: club }
  if (!(await proposeTransfer(scope, { ...sides, diver, name, bornOn: null })))
    return refuse(form, 'A transfer of this diver is open already. Take that back first.')
  redirect('/desk/transfers?done=proposed')
})

/** Proposes a transfer to another club. */
export async function proposeAction(previous: FormState, form: FormData): Promise<FormState> {
  return propose(previous, form)
}

const leave = gatedForm(z.object({ diver: z.uuid() }), async ({ diver }, _actor, form): Promise<FormState> => {
  const { scope, club } = await loadHeadedDiver(diver)
  if (!(await leaveClub(scope, diver, club, systemClock()))) return refuse(form, 'She had left before.')
  redirect('/desk/transfers?done=left')
})

/** A diver leaves the club without a new one. */
export async function leaveAction(previous: FormState, form: FormData): Promise<FormState> {
  return leave(previous, form)
}
