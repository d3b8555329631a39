'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canCoach, canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { checkKinds } from '@/lib/assessment/moment-check'
import type { Outcome } from '@/lib/assessment/outcome'
import { answerQuestion, checkMoment } from '@/lib/assessment/store/check-moment'
import { systemClock } from '@/lib/platform/clock'

const words = z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }).default('')
/** Where to go on: a page of the desk, with its query. */
const next = z.string().regex(/^\/desk\/(queue|moments|video)(\/|\?|$)/)

function answered(form: FormData, outcome: Outcome): FormState | null {
  if (outcome.ok) return null
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
}

/** Without `next` the page stays: a film that does not open is noticed while it is looked at. */
const checking = z.object({ moment: z.uuid(), kind: z.enum(checkKinds), words, next: next.optional() })

const check = gatedForm(checking, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the diver’s head coach goes through the evidence.')
  const refused = answered(form, await checkMoment(coachingScopeOf(actor, systemClock()), input))
  if (!refused && input.next) redirect(input.next)
  return refused ?? { done: true, message: 'Kept.' }
})

/** Keeps what a head coach makes of a moment. */
export async function checkAction(previous: FormState, form: FormData): Promise<FormState> {
  return check(previous, form)
}

const answering = z.object({ question: z.uuid(), words, next })

const answer = gatedForm(answering, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only the coach who rated the moment answers the question.')
  const refused = answered(form, await answerQuestion(coachingScopeOf(actor, systemClock()), input))
  if (refused) return refused
  redirect(input.next)
})

/** Keeps what the coach who rated a moment answers to a question about it. */
export async function answerAction(previous: FormState, form: FormData): Promise<FormState> {
  return answer(previous, form)
}
