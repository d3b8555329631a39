'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { refuseBirth } from '@/lib/assessment/new-divers'
import { mendParticulars } from '@/lib/assessment/store/divers'
import { dayIn, parseDay } from '@/lib/assessment/time'
import { loadHeadedDiver } from './loader'

const name = z.string().trim().min(1, { error: 'Write the name.' }).max(80, { error: 'At most 80 letters.' })
const side = z.union([z.literal('').transform(() => null), z.enum(['left', 'right'])])
const particulars = z.object({
  id: z.uuid(),
  givenName: name,
  familyName: name,
  born: z.union([z.literal(''), z.iso.date({ error: 'Write the date as 2014-05-31, or leave it empty.' })]),
  twistingSide: side,
  hurdleLeg: side,
})

const mend = gatedForm(particulars, async ({ born, ...input }, _actor, form): Promise<FormState> => {
  const { scope, zone } = await loadHeadedDiver(input.id)
  const day = born === '' ? null : parseDay(born)
  const wrong = day === null ? null : refuseBirth(day, dayIn(scope.at, zone))
  if (wrong) return refuse(form, 'Nothing was changed yet.', { born: `Look again: ${wrong}.` })
  if (!(await mendParticulars(scope, { ...input, born: day })))
    return refuse(form, 'Nothing was changed: she is not of a club that you head any more.')
  redirect(`/desk/divers/${input.id}`)
})

/** Mends a diver's names, birth date, twisting side and hurdle leg. */
export async function mendAction(previous: FormState, form: FormData): Promise<FormState> {
  return mend(previous, form)
}
