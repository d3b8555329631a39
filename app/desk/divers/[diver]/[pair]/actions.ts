'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse, tickedIn } from '@/lib/access/action'
import { canCoach } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { signSkill } from '@/lib/assessment/store/sign'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'

const reason = z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }).default('')

const waivable = ['coaches', 'days', 'moments', 'certainty', 'count'] as const
const signing = z.object({
  diver: z.uuid(),
  pair: z.string().min(1).max(120),
  level: z.string().min(1).max(80),
  reason,
})

const here = (diver: string, pair: string) => `/desk/divers/${diver}/${encodeURIComponent(pair)}?done=1`

const sign = gatedForm(signing, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach of the diver’s club signs skills off.')
  const ticked = tickedIn(form, 'waive')
  const waive = waivable.filter((what) => ticked.includes(what))
  const waived = Object.fromEntries(waive.map((what) => [what, what === 'count' ? 2 : true]))
  const outcome = await signSkill(coachingScopeOf(actor, systemClock()), {
    diver: input.diver,
    pair: input.pair as PairKey,
    level: input.level,
    waiver: waive.length > 0 ? waived : null,
    reason: input.reason.trim() || null,
  })
  if (outcome.ok) redirect(here(input.diver, input.pair))
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
})

/** Signs a skill off, or says what it still wants. */
export async function signAction(previous: FormState, form: FormData): Promise<FormState> {
  return sign(previous, form)
}
