'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, gatedForm } from '@/lib/access/action'
import { keepSquad } from '@/lib/access/store/squads'
import { loadSquad, loadSquadClub } from '../loader'

const squad = z.looseObject({
  squad: z.uuid(),
  name: z.string().trim().min(1, { error: 'Name the squad.' }).max(60, { error: 'At most 60 letters.' }),
})

const keep = gatedForm(squad, async ({ squad: id, name }, _actor, form): Promise<FormState> => {
  const { scope, club } = await loadSquadClub(id)
  const { divers } = await loadSquad(id)
  // Whoever has left meanwhile is on nobody's list any more.
  const chosen = divers.map((diver) => diver.id).filter((diver) => form.has(`diver:${diver}`))
  await keepSquad(scope, id, { name, divers: chosen })
  redirect(`/desk/squads?club=${club.club}&done=squad`)
})

/** Names a squad and says who is in it. */
export async function keepSquadAction(previous: FormState, form: FormData): Promise<FormState> {
  return keep(previous, form)
}
