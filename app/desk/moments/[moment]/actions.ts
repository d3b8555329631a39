'use server'

import { refresh } from 'next/cache'
import { z } from 'zod'
import type { Answer } from '@/app/_components/domain/clip/marks/marks-view'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { keepMark } from '@/lib/assessment/store/marks'
import { systemClock } from '@/lib/platform/clock'

const marking = z.object({
  moment: z.uuid(),
  key: z.string().max(40),
  atMs: z.number().nullable(),
  frameUs: z.number().nullable(),
})

const unreadable: Answer = { ok: false, message: 'That could not be read. Nothing was kept; open the page again.' }

/** Keeps where a phase begins, or takes that back. */
export async function markAction(ask: unknown): Promise<Answer> {
  const actor = await requireCoach()
  const parsed = marking.safeParse(ask)
  if (!parsed.success) return unreadable
  const outcome = await keepMark(coachingScopeOf(actor, systemClock()), parsed.data)
  if (!outcome.ok) return { ok: false, message: outcome.refusal.message }
  refresh()
  return { ok: true }
}
