'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse, tickedIn } from '@/lib/access/action'
import { canCoach, canDecide, canPublish } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { setGrant, setOpening } from '@/lib/assessment/store/grants'
import { rateLook, readLooks } from '@/lib/assessment/store/second-look'
import type { Rating } from '@/lib/curriculum/model'
import { systemClock } from '@/lib/platform/clock'

const rating = z.enum(['0', '1', '2', '3', '4']).transform((face) => Number(face) as Rating)
const tick = z.literal('on')
const looking = z
  .object({ attempt: z.uuid(), rest: tick.optional(), unseen: tick.optional() })
  .catchall(z.union([rating, tick]))

/** Ratings come as `rate:CRITERION`; a fault is ticked as `fault:FAULT`. */
const ratingsIn = (input: z.infer<typeof looking>): Record<string, Rating> =>
  Object.fromEntries(
    Object.entries(input).flatMap(([name, value]) =>
      name.startsWith('rate:') && typeof value === 'number' ? [[name.slice('rate:'.length), value]] : [],
    ),
  )

const look = gatedForm(looking, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach rates what is to be looked at.')
  const scope = coachingScopeOf(actor, systemClock())
  const ratings = ratingsIn(input)
  const pair = (await readLooks(scope)).looks.find(({ attempt }) => attempt === input.attempt)?.pair
  const blank = pair?.criteria.filter(({ criterion }) => criterion.critical && ratings[criterion.key] === undefined)
  if (blank && blank.length > 0 && !input.unseen) {
    const names = blank.map(({ criterion }) => `“${criterion.title}”`).join(', ')
    return refuse(form, `Rate ${names}, or say below that the video does not show it. Nothing was kept yet.`)
  }
  const rest = input.rest === 'on'
  const faults = tickedIn(form, 'fault')
  const outcome = await rateLook(scope, { attempt: input.attempt, ratings, restAsExpected: rest, faults })
  if (outcome.ok) redirect('/desk/video?done=look')
  return refuse(form, outcome.refusal.message)
})

/** Keeps what a second coach saw on video. */
export async function lookAction(previous: FormState, form: FormData): Promise<FormState> {
  return look(previous, form)
}

const granting = z.object({
  attempt: z.uuid(),
  coach: z.uuid({ error: 'Choose a coach.' }),
  granted: z.enum(['yes', 'no']),
  back: z.string().regex(/^\/desk\/divers\//),
})

const grant = gatedForm(granting, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the head coach asks coaches of other clubs.')
  const granted = input.granted === 'yes'
  const outcome = await setGrant(coachingScopeOf(actor, systemClock()), { ...input, granted })
  if (outcome.ok) redirect(`${input.back}?done=${granted ? 'grant' : 'ungrant'}`)
  const { message, field } = outcome.refusal
  return refuse(form, message, field ? { [field]: message } : undefined)
})

/** Grants an attempt to a coach of another club, or withdraws it. */
export async function grantAction(previous: FormState, form: FormData): Promise<FormState> {
  return grant(previous, form)
}

const opening = z.object({ open: z.enum(['yes', 'no']) })

const openLooks = gatedForm(opening, async ({ open }, actor, form): Promise<FormState> => {
  if (!canPublish(actor)) return refuse(form, 'Only the programme lead opens looking across clubs.')
  await setOpening(coachingScopeOf(actor, systemClock()), open === 'yes')
  redirect('/desk/video?done=opening')
})

/** Opens or closes looks across clubs. */
export async function openingAction(previous: FormState, form: FormData): Promise<FormState> {
  return openLooks(previous, form)
}
