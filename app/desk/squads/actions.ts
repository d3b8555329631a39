'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { makeSquad } from '@/lib/access/store/squads'
import { systemClock } from '@/lib/platform/clock'

const squad = z.object({
  club: z.uuid(),
  name: z.string().trim().min(1, { error: 'Name the squad.' }).max(60, { error: 'At most 60 letters.' }),
})

const make = gatedForm(squad, async ({ club, name }, actor, form): Promise<FormState> => {
  if (!canDecide(actor, club)) return refuse(form, 'Only the head coach makes squads.')
  const id = await makeSquad(coachingScopeOf(actor, systemClock()), club, name)
  redirect(`/desk/squads/${id}`)
})

/** Makes a squad and goes there. */
export async function makeSquadAction(previous: FormState, form: FormData): Promise<FormState> {
  return make(previous, form)
}
