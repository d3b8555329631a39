'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canPublish } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { addClub } from '@/lib/access/store/clubs'
import { isZone } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

const club = z.object({
  name: z.string().trim().min(1, { error: 'Write the club’s name.' }).max(80, { error: 'At most 80 letters.' }),
  zone: z.string().trim().refine(isZone, { error: 'Write an IANA time zone, such as Europe/London.' }),
})

const add = gatedForm(club, async (input, actor, form): Promise<FormState> => {
  if (!canPublish(actor)) return refuse(form, 'Only the programme lead adds clubs.')
  const id = await addClub(scopeOf(actor, systemClock()), input)
  if (!id) return refuse(form, 'Mend the name.', { name: 'A club of this name is there already.' })
  redirect('/region/clubs?done=club')
})

/** Adds a club to the programme. */
export async function addClubAction(previous: FormState, form: FormData): Promise<FormState> {
  return add(previous, form)
}
