'use server'

import { refresh } from 'next/cache'
import { z } from 'zod'
import type { Answer } from '@/app/_components/domain/clip/marks/marks-view'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { flightAskSchema, onFramesSchema } from '@/lib/assessment/measure/taken-schema'
import type { Outcome } from '@/lib/assessment/outcome'
import { keepMark } from '@/lib/assessment/store/marks'
import { keepMeasure, takeBackMeasure } from '@/lib/assessment/store/measures'
import { systemClock } from '@/lib/platform/clock'

const marking = z.object({
  moment: z.uuid(),
  key: z.string().max(40),
  atMs: z.number().nullable(),
  frameUs: z.number().nullable(),
})

const unreadable: Answer = { ok: false, message: 'That could not be read. Nothing was kept; open the page again.' }

/** Parse, actor, write; then the page shows what is kept now. */
async function keep<Schema extends z.ZodType>(
  schema: Schema,
  ask: unknown,
  write: (scope: Scope, asked: z.infer<Schema>) => Promise<Outcome>,
): Promise<Answer> {
  const actor = await requireCoach()
  const parsed = schema.safeParse(ask)
  if (!parsed.success) return unreadable
  const outcome = await write(coachingScopeOf(actor, systemClock()), parsed.data)
  if (!outcome.ok) return { ok: false, message: outcome.refusal.message }
  refresh()
  return { ok: true }
}

/** Keeps where a phase begins, or takes that back. */
export async function markAction(ask: unknown): Promise<Answer> {
  return keep(marking, ask, keepMark)
}

const measuring = z.object({ moment: z.uuid(), taken: z.union([onFramesSchema, flightAskSchema]) })

/** Keeps a measure: what was placed, and what the server makes of it. */
export async function measureAction(ask: unknown): Promise<Answer> {
  return keep(measuring, ask, keepMeasure)
}

const takingBack = z.object({ moment: z.uuid(), measure: z.uuid() })

/** Takes back a measure of the coach's own. */
export async function takeBackAction(ask: unknown): Promise<Answer> {
  return keep(takingBack, ask, takeBackMeasure)
}
