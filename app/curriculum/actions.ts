'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canPublish } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { setGuideOpening } from '@/lib/curriculum/store/guide-opening'
import { systemClock } from '@/lib/platform/clock'

const opening = z.object({
  open: z.enum(['yes', 'no']),
  listed: z.enum(['yes', 'no'], { error: 'Say whether search engines may list them.' }),
})

const openGuides = gatedForm(opening, async ({ open, listed }, actor, form): Promise<FormState> => {
  if (!canPublish(actor)) return refuse(form, 'Only the programme lead opens the guides to families.')
  await setGuideOpening(scopeOf(actor, systemClock()), { open: open === 'yes', listed: listed === 'yes' })
  redirect('/curriculum')
})

/** Opens the guides to families, or closes them. */
export async function openGuidesAction(previous: FormState, form: FormData): Promise<FormState> {
  return openGuides(previous, form)
}
