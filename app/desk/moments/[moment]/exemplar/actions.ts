'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import type { Outcome } from '@/lib/assessment/outcome'
import { nameExemplar, withdrawExemplar } from '@/lib/assessment/store/exemplars'
import { systemClock } from '@/lib/platform/clock'

const onlyHead = 'Only the diver’s head coach names and withdraws exemplars.'

function answer(form: FormData, outcome: Outcome, moment: string): FormState {
  if (outcome.ok) redirect(`/desk/moments/${moment}`)
  const { message, field } = outcome.refusal
  return field
    ? refuse(form, 'Nothing was named yet. Please mend this first.', { [field]: message })
    : refuse(form, message)
}

const naming = z.object({
  moment: z.uuid(),
  shows: z
    .string()
    .regex(/^(criterion|fault):[a-z0-9-]+$/, { error: 'Choose what it shows.' })
    .transform((text) => ({ kind: text.slice(0, text.indexOf(':')), key: text.slice(text.indexOf(':') + 1) })),
  level: z.string().max(80).default(''),
})

const name = gatedForm(naming, async ({ moment, shows, level }, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, onlyHead)
  const { kind, key } = shows
  const named =
    kind === 'fault' ? ({ kind, fault: key } as const) : ({ kind: 'criterion', criterion: key, level } as const)
  return answer(form, await nameExemplar(coachingScopeOf(actor, systemClock()), { moment, shows: named }), moment)
})

/** Names a moment as an exemplar. */
export async function nameAction(previous: FormState, form: FormData): Promise<FormState> {
  return name(previous, form)
}

const withdrawing = z.object({ moment: z.uuid(), exemplar: z.uuid() })

const withdraw = gatedForm(withdrawing, async ({ moment, exemplar }, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, onlyHead)
  return answer(form, await withdrawExemplar(coachingScopeOf(actor, systemClock()), exemplar), moment)
})

/** Takes an exemplar away. */
export async function withdrawAction(previous: FormState, form: FormData): Promise<FormState> {
  return withdraw(previous, form)
}
