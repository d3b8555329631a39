'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canCoach } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { readMoment } from '@/lib/assessment/moment-text'
import { dropFilmed, linkFilmed } from '@/lib/assessment/store/link-filmed'
import { systemClock } from '@/lib/platform/clock'

const linking = z.object({ attempt: z.uuid(), link: z.string(), start: z.string(), end: z.string() })

const link = gatedForm(linking, async ({ attempt, ...typed }, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach links what was filmed.')
  const read = readMoment({ id: attempt, ...typed })
  if (!read.ok) return refuse(form, 'Nothing was linked yet: mend what is marked.', { ...read.errors })
  const { link, start, end } = read.moment
  const outcome = await linkFilmed(coachingScopeOf(actor, systemClock()), [{ attempt, link, start, end }])
  if (outcome.ok) redirect('/desk/clips?done=linked')
  return refuse(form, outcome.refusal.message)
})

/** Links one clip to the attempt that waits for it. */
export async function linkAction(previous: FormState, form: FormData): Promise<FormState> {
  return link(previous, form)
}

const dropping = z.object({ attempt: z.uuid() })

const drop = gatedForm(dropping, async ({ attempt }, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach says that it was not filmed.')
  const outcome = await dropFilmed(coachingScopeOf(actor, systemClock()), attempt)
  if (outcome.ok) redirect('/desk/clips?done=dropped')
  return refuse(form, outcome.refusal.message)
})

/** Takes an attempt off the list that was not filmed after all. */
export async function dropAction(previous: FormState, form: FormData): Promise<FormState> {
  return drop(previous, form)
}
