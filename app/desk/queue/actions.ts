'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse, tickedIn } from '@/lib/access/action'
import { canCoach } from '@/lib/access/can'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import type { Outcome } from '@/lib/assessment/outcome'
import { answeredHow, type QuestionSaying } from '@/lib/assessment/question'
import type { TargetKey } from '@/lib/assessment/record'
import { closeCall } from '@/lib/assessment/store/close-call'
import { decideTarget } from '@/lib/assessment/store/decide'
import { acceptRating, releaseAttempt } from '@/lib/assessment/store/release'
import { revoke } from '@/lib/assessment/store/revoke'
import { signSkill } from '@/lib/assessment/store/sign'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'

const words = z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }).default('')
const key = z.string().min(1).max(120)
/** Where the form stands: a page of the desk, with its query. */
const back = z
  .string()
  .regex(/^\/desk\/(queue|divers)(\/|\?|$)/)
  .default('/desk/queue')

const decision = {
  diver: z.uuid(),
  target: key.transform((text) => text as TargetKey),
  reason: words,
  onlyCoach: words,
  diverWants: z.enum(['yes', 'not yet']).nullable().default(null),
  basis: z.string().max(64).nullable().default(null),
  back,
}

const acts = z.discriminatedUnion('act', [
  // What is said of a question comes as `how:QUESTION`, and why it is left open as `why:QUESTION`.
  z.object({ act: z.enum(['approve', 'override', 'return', 'withdraw']), ...decision }).catchall(words),
  z.object({ act: z.literal('sign'), diver: z.uuid(), pair: key, level: key, back }),
  z.object({
    act: z.literal('revoke'),
    kind: z.enum(['sign-off', 'recognition']),
    subject: z.uuid(),
    reason: words,
    back,
  }),
  z.object({ act: z.literal('release'), attempt: z.uuid(), reason: words, back }),
  z.object({ act: z.literal('accept'), observation: z.uuid(), reason: words, back }),
  z.object({ act: z.literal('close'), call: z.uuid(), reason: words, back }),
])

function sayingsIn(input: Readonly<Record<string, unknown>>): QuestionSaying[] {
  const text = (name: string) => String(input[name] ?? '')
  return Object.keys(input)
    .filter((name) => name.startsWith('how:'))
    .map((name) => {
      const question = name.slice('how:'.length)
      const how = answeredHow.find((one) => one === text(name)) ?? null
      return { question, how, reason: text(`why:${question}`) }
    })
}

function perform(scope: Scope, input: z.infer<typeof acts>, form: FormData): Promise<Outcome> {
  switch (input.act) {
    case 'sign':
      return signSkill(scope, { ...input, pair: input.pair as PairKey, waiver: null, reason: null })
    case 'revoke':
      return revoke(scope, input)
    case 'release':
      return releaseAttempt(scope, input)
    case 'accept':
      return acceptRating(scope, input)
    case 'close':
      return closeCall(scope, input)
    default:
      return decideTarget(scope, {
        ...input,
        outcome: input.act,
        wantsMoreOf: tickedIn(form, 'wantsMoreOf') as PairKey[],
        questions: sayingsIn(input),
      })
  }
}

const review = gatedForm(acts, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach of the diver’s club may do that.')
  const outcome = await perform(coachingScopeOf(actor, systemClock()), input, form)
  if (outcome.ok) redirect(`${input.back}${input.back.includes('?') ? '&' : '?'}done=${input.act}`)
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
})

/** One thing that a head coach does about a line of her lists; refused with a sentence, and what was typed is kept. */
export async function reviewAction(previous: FormState, form: FormData): Promise<FormState> {
  return review(previous, form)
}
