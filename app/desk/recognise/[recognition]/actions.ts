'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { revoke } from '@/lib/assessment/store/revoke'
import { systemClock } from '@/lib/platform/clock'

const revoking = z.object({
  recognition: z.uuid(),
  reason: z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }),
})

const takeBack = gatedForm(revoking, async ({ recognition, reason }, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the head coach takes a recognition back.')
  const request = { kind: 'recognition', subject: recognition, reason } as const
  const outcome = await revoke(coachingScopeOf(actor, systemClock()), request)
  if (outcome.ok) redirect(`/desk/recognise/${recognition}`)
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
})

/** Takes a recognition back, in writing. */
export async function revokeRecognitionAction(previous: FormState, form: FormData): Promise<FormState> {
  return takeBack(previous, form)
}
