'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import type { TargetKey } from '@/lib/assessment/record'
import { decideTarget } from '@/lib/assessment/store/decide'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'

const words = z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }).default('')

const decision = z.object({
  diver: z.uuid(),
  target: z.string().min(1).max(120),
  outcome: z.enum(['approve', 'override', 'return', 'withdraw']),
  reason: words,
  onlyCoach: words,
  diverWants: z.enum(['yes', 'not yet']).nullable().default(null),
  wantsMoreOf: z.union([z.string().transform((one) => [one]), z.array(z.string())]).default([]),
})

const decide = gatedForm(decision, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only a head coach decides on levels and board moves.')
  const outcome = await decideTarget(coachingScopeOf(actor, systemClock()), {
    ...input,
    target: input.target as TargetKey,
    wantsMoreOf: input.wantsMoreOf as PairKey[],
  })
  if (outcome.ok) redirect(`/desk/queue?done=${input.outcome}`)
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
})

/** Records the head coach's decision, or says why it cannot be and keeps what was typed. */
export async function decideAction(previous: FormState, form: FormData): Promise<FormState> {
  return decide(previous, form)
}
