'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import type { Actor } from '@/lib/access/actor'
import { canDecide } from '@/lib/access/can'
import { setCoachScope } from '@/lib/access/store/coach-scopes'
import { endPost } from '@/lib/assessment/store/posts'
import { asOfDay, parseDay } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'
import { loadManaged } from './loader'

/** Where the list stands from which the post was opened: the head coach's people, or the lead's clubs. */
const listOf = (actor: Actor, club: string, done: string): string =>
  canDecide(actor, club) ? `/desk/people?club=${club}&done=${done}` : `/region/clubs?done=${done}`

const setting = z.looseObject({
  post: z.uuid(),
  until: z.union([z.literal(''), z.iso.date({ error: 'Write the date as 2026-09-30, or leave it empty.' })]),
})

/** Ticks are fields of their own: `family:forward`, `place:1m`. */
const ticked = (form: FormData, kind: string): string[] =>
  [...form.keys()].flatMap((name) => (name.startsWith(`${kind}:`) ? [name.slice(kind.length + 1)] : []))

const set = gatedForm(setting, async ({ post: id, until }, actor, form): Promise<FormState> => {
  const { scope, post, zone } = await loadManaged(id)
  const [families, places] = [ticked(form, 'family'), ticked(form, 'place')]
  if (families.length === 0 || places.length === 0)
    return refuse(form, 'Tick at least one family and one place; to take everything away, end the post.')
  const last = until === '' ? null : asOfDay(parseDay(until), zone).instant
  if (last !== null && last < scope.at) return refuse(form, 'Mend the date.', { until: 'That day is over already.' })
  await setCoachScope(scope, { account: post.account, club: post.club, families, places, until: last })
  redirect(listOf(actor, post.club, 'scope'))
})

/** Sets what a coach may judge. */
export async function setScopeAction(previous: FormState, form: FormData): Promise<FormState> {
  return set(previous, form)
}

const end = gatedForm(z.object({ post: z.uuid() }), async ({ post: id }, actor, form) => {
  const { scope, post } = await loadManaged(id)
  if (!(await endPost(scope, post.id, systemClock()))) return refuse(form, 'The post was ended before.')
  redirect(listOf(actor, post.club, 'ended'))
})

/** Ends a coach's post, today. */
export async function endPostAction(previous: FormState, form: FormData): Promise<FormState> {
  return end(previous, form)
}
