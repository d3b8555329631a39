import { recordIncident, releaseIncident } from '../../lib/assessment/store/desk-incident'
import { noteGrowth } from '../../lib/assessment/store/growth'
import { type EpochDay, parseDay } from '../../lib/assessment/time'
import type { DiverInSeason } from './choose'
import { clubs, squads } from './coast'
import { coachScope, require } from './hands'
import { instantOn } from './season'

const minute = 60_000

/** The head coach of the club whose squad a diver is in. */
export function headOf({ story }: DiverInSeason): string {
  const club = squads.find((squad) => squad.key === story.squad)?.club
  const head = clubs.find(({ key }) => key === club)?.head
  if (!head) throw new Error(`${story.given} is in no club's squad`)
  return head
}

async function tellMishap(diver: DiverInSeason, day: EpochDay): Promise<void> {
  const { mishap, given } = diver.story
  if (!mishap || parseDay(mishap.on) !== day) return
  const head = headOf(diver)
  const at = instantOn(day, 13)
  const { pair, what, note } = mishap
  const recorded = await recordIncident(await coachScope(head, at), {
    diver: diver.id,
    ...{ pair, what, note },
    at: () => at - 20 * minute,
  })
  require(`${what} of ${given}`, recorded)
  if (!mishap.cleared || !recorded.ok) return
  const words = { reason: mishap.cleared, statement: '' }
  const clearing = { diver: diver.id, incident: recorded.id, ...words }
  require(`the clearing of ${given}`, await releaseIncident(await coachScope(head, at + 40 * minute), clearing))
}

/** What happened to divers on a day beside their dives: incidents, cleared before the next session or not, and growth. */
export async function tellMishaps(day: EpochDay, divers: readonly DiverInSeason[]): Promise<void> {
  for (const diver of divers) {
    await tellMishap(diver, day)
    const { grown } = diver.story
    if (!grown || parseDay(grown.on) !== day) continue
    const scope = await coachScope(headOf(diver), instantOn(day, 14))
    const noted = await noteGrowth(scope, { diver: diver.id, notedOn: day, words: grown.words })
    require(`the growth of ${diver.story.given}`, noted)
  }
}
