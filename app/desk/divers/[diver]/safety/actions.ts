'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { canCoach, canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { purposes, reaches } from '@/lib/assessment/consent'
import type { Outcome } from '@/lib/assessment/outcome'
import { incidentKinds } from '@/lib/assessment/record'
import { closesKinds } from '@/lib/assessment/stand-down'
import { recordIncident, releaseIncident } from '@/lib/assessment/store/desk-incident'
import { noteGrowth } from '@/lib/assessment/store/growth'
import { recordConsent } from '@/lib/assessment/store/record-consent'
import { endStandDown, standDown } from '@/lib/assessment/store/stand-down'
import { parseDay } from '@/lib/assessment/time'
import { instantAt } from '@/lib/assessment/wall-clock'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'

const words = z.string().max(2000, { error: 'At most 2000 characters: say it more briefly.' }).default('')
const day = z.iso.date({ error: 'Name a day, as in 2026-03-07.' }).transform(parseDay)
const diver = z.uuid()

/** Goes back to the page and says what was done, or says why nothing was and keeps what was typed. */
function answer(form: FormData, outcome: Outcome, about: string, done: string): FormState {
  if (outcome.ok) redirect(`/desk/divers/${about}/safety?done=${done}`)
  const { message, field } = outcome.refusal
  return field
    ? refuse(form, 'Nothing was saved yet. Please mend this first.', { [field]: message })
    : refuse(form, message)
}

const incident = z.object({
  diver,
  pair: z.string().min(1, { error: 'Choose the skill and the place.' }).max(120),
  what: z.enum(incidentKinds, { error: 'Choose what it was.' }),
  day,
  time: z.iso.time({ precision: -1, error: 'Name a time, as in 14:05.' }),
  note: words,
})

const record = gatedForm(incident, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach of the diver’s club records an incident.')
  const [hours = 0, minutes = 0] = input.time.split(':').map(Number)
  const outcome = await recordIncident(coachingScopeOf(actor, systemClock()), {
    diver: input.diver,
    pair: input.pair as PairKey,
    what: input.what,
    note: input.note,
    at: (zone) => instantAt(input.day, hours * 60 + minutes, zone),
  })
  return answer(form, outcome, input.diver, 'recorded')
})

/** Records an incident: it pauses at once. */
export async function recordIncidentAction(previous: FormState, form: FormData): Promise<FormState> {
  return record(previous, form)
}

/** `back`: she came from her list, and goes on with it. */
const clearing = z.object({
  ...{ diver, incident: z.uuid(), reason: words, statement: words },
  back: z.literal('queue').optional(),
})

const clear = gatedForm(clearing, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the diver’s head coach clears an incident.')
  const outcome = await releaseIncident(coachingScopeOf(actor, systemClock()), input)
  if (outcome.ok && input.back) redirect('/desk/queue?done=cleared')
  return answer(form, outcome, input.diver, 'cleared')
})

/** Clears an incident, in writing. */
export async function clearIncidentAction(previous: FormState, form: FormData): Promise<FormState> {
  return clear(previous, form)
}

const standing = z.object({
  diver,
  closes: z.enum(closesKinds, { error: 'Choose from what.' }),
  from: day,
  until: z.union([z.literal('').transform(() => null), day]),
  reason: words,
})

const stand = gatedForm(standing, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the diver’s head coach stands a diver down.')
  return answer(form, await standDown(coachingScopeOf(actor, systemClock()), input), input.diver, 'stood-down')
})

/** Stands a diver down. */
export async function standDownAction(previous: FormState, form: FormData): Promise<FormState> {
  return stand(previous, form)
}

const ending = z.object({ diver, standDown: z.uuid(), freeFrom: day })

const end = gatedForm(ending, async (input, actor, form): Promise<FormState> => {
  if (!canDecide(actor)) return refuse(form, 'Only the diver’s head coach ends a stand-down.')
  return answer(form, await endStandDown(coachingScopeOf(actor, systemClock()), input), input.diver, 'ended')
})

/** Ends a stand-down. */
export async function endStandDownAction(previous: FormState, form: FormData): Promise<FormState> {
  return end(previous, form)
}

const growing = z.object({ diver, notedOn: day, words })

const grow = gatedForm(growing, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach of the diver’s club notes growth.')
  return answer(form, await noteGrowth(coachingScopeOf(actor, systemClock()), input), input.diver, 'noted')
})

/** Notes that a diver has grown quickly. */
export async function noteGrowthAction(previous: FormState, form: FormData): Promise<FormState> {
  return grow(previous, form)
}

const consenting = z.object({
  diver,
  purpose: z.enum(purposes),
  given: z.enum(['yes', 'no']),
  reach: z.enum(reaches).optional(),
  saidBy: words,
})

const consent = gatedForm(consenting, async (input, actor, form): Promise<FormState> => {
  if (!canCoach(actor)) return refuse(form, 'Only a coach of the diver’s club records consents.')
  const said = { ...input, given: input.given === 'yes' }
  return answer(form, await recordConsent(coachingScopeOf(actor, systemClock()), said), input.diver, 'consent')
})

/** Records that a consent was given or withdrawn. */
export async function recordConsentAction(previous: FormState, form: FormData): Promise<FormState> {
  return consent(previous, form)
}
