'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { readRecognisedKey } from '@/lib/assessment/recognise'
import { recogniseAll } from '@/lib/assessment/store/recognise'
import { loadHeaded } from '../people/loader'

const recognising = z.looseObject({
  club: z.uuid(),
  squad: z.string().max(60),
  reason: z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }),
})

/** Ticks are fields of their own: `tick DIVER KEY`. */
const ticksIn = (form: FormData) =>
  [...form.keys()].flatMap((name) => {
    const [, diver, key] = /^tick ([0-9a-f-]{36}) (.+)$/.exec(name) ?? []
    const what = key ? readRecognisedKey(key) : null
    return diver && what ? [{ diver, what }] : []
  })

const recognise = gatedForm(recognising, async ({ club, squad, reason }, _actor, form): Promise<FormState> => {
  const { scope } = await loadHeaded('/desk/recognise', club)
  const outcome = await recogniseAll(scope, { ticks: ticksIn(form), reason })
  if (outcome.ok) {
    const where = new URLSearchParams({ club, squad, done: String(outcome.count) })
    redirect(`/desk/recognise?${where}`)
  }
  const field = outcome.refusals.find((refusal) => refusal.field)?.field
  const message = outcome.refusals.map((refusal) => refusal.message).join('\n')
  return refuse(
    form,
    field ? 'Nothing was recognised yet; your ticks are kept.' : message,
    field ? { [field]: message } : undefined,
  )
})

/** Recognises everything that is ticked, or nothing and says why. */
export async function recogniseAction(previous: FormState, form: FormData): Promise<FormState> {
  return recognise(previous, form)
}
