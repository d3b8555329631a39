'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm, refuse } from '@/lib/access/action'
import { readSquads } from '@/lib/access/store/squads'
import { readDiverLines } from '@/lib/assessment/new-divers'
import { enterDivers } from '@/lib/assessment/store/divers'
import { dayIn, parseDay } from '@/lib/assessment/time'
import { loadHeaded } from '../../people/loader'

const entering = z.object({
  club: z.uuid(),
  squad: z.union([z.literal(''), z.uuid()]).default(''),
  since: z.iso.date({ error: 'Write the date as 2026-09-01.' }),
  lines: z.string().max(20_000, { error: 'That is more than a club’s divers: enter them in parts.' }),
})

const enter = gatedForm(entering, async (input, _actor, form): Promise<FormState> => {
  const { scope, club } = await loadHeaded('/desk/squads', input.club)
  const today = dayIn(scope.at, club.zone)
  const since = parseDay(input.since)
  if (since > today) return refuse(form, 'Nobody was entered yet.', { since: 'That day has not come yet.' })
  const read = readDiverLines(input.lines, today)
  if (!read.ok) {
    const problems = read.problems.map(({ message }) => message).join('\n')
    return refuse(form, 'Nobody was entered yet; your lines are kept.', { lines: problems })
  }
  const { squads } = await readSquads(scope, club.club)
  const squad = squads.find(({ id }) => id === input.squad)?.id ?? null
  await enterDivers(scope, { club: club.club, zone: club.zone, squad, since, divers: read.divers })
  redirect(`/desk/squads?club=${club.club}&done=divers&count=${read.divers.length}`)
})

/** Enters the divers of all lines, or none and says which lines are wrong. */
export async function enterDiversAction(previous: FormState, form: FormData): Promise<FormState> {
  return enter(previous, form)
}
