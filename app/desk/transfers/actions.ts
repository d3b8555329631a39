'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { agreeToTransfer, endTransfer, proposeTransfer, takeBack } from '@/lib/access/store/transfers'
import { loadHeadCoach } from './loader'

const settled = 'It was settled before: load the page afresh.'
const chosen = z.union([z.literal('').transform(() => null), z.uuid()]).default(null)

const agree = gatedForm(z.object({ transfer: z.uuid(), diver: chosen }), async ({ transfer, diver }, _actor, form) => {
  const { scope } = await loadHeadCoach()
  const result = await agreeToTransfer(scope, transfer, diver)
  if (result === 'closed') return refuse(form, settled)
  if (result === 'not there')
    return refuse(form, 'Nothing has moved.', {
      diver: 'Say which diver is meant; she must be of the club she leaves.',
    })
  redirect('/desk/transfers?done=agreed')
})

/** The other club's consent. */
export async function agreeAction(previous: FormState, form: FormData): Promise<FormState> {
  return agree(previous, form)
}

const end = gatedForm(z.object({ transfer: z.uuid() }), async ({ transfer }, _actor, form) => {
  const { scope } = await loadHeadCoach()
  if (!(await endTransfer(scope, transfer))) return refuse(form, settled)
  redirect('/desk/transfers?done=ended')
})

/** Takes a proposal back, or declines one. */
export async function endAction(previous: FormState, form: FormData): Promise<FormState> {
  return end(previous, form)
}

const asking = z.object({
  to: z.uuid(),
  from: z.uuid({ error: 'Choose the club.' }),
  name: z.string().trim().min(3, { error: 'Write given and family name.' }).max(160),
  born: z.union([
    z.literal('').transform(() => null),
    z.iso.date({ error: 'Write the date as 2014-05-31.' }).transform((text) => new Date(text)),
  ]),
})

const ask = gatedForm(asking, async ({ to, from, name, born }, _actor, form) => {
  const { scope, headed } = await loadHeadCoach()
  if (!headed.includes(to) || from === to) return refuse(form, 'Choose a club of yours and another one.')
  await proposeTransfer(scope, { fromClub: from, toClub: to, proposedFor: to, diver: null, name, bornOn: born })
  redirect('/desk/transfers?done=proposed')
})

/** Asks another club for a diver by name. */
export async function askAction(previous: FormState, form: FormData): Promise<FormState> {
  return ask(previous, form)
}

const back = gatedForm(z.object({ diver: z.uuid(), club: z.uuid() }), async ({ diver, club }, _actor, form) => {
  const { scope } = await loadHeadCoach()
  if (!(await takeBack(scope, diver, club)))
    return refuse(form, 'She is with a club already, or was not with yours last.')
  redirect(`/desk/divers/${diver}`)
})

/** Takes a diver who left back into the club. */
export async function takeBackAction(previous: FormState, form: FormData): Promise<FormState> {
  return back(previous, form)
}
