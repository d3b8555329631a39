import { notFound } from 'next/navigation'
import { canCoach, canDecide, canReview } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { listTargets } from '@/lib/assessment/readiness/targets'
import { targetName } from '@/lib/assessment/readiness/wording'
import { readToDo } from '@/lib/assessment/store/safety'
import { readStandings } from '@/lib/assessment/store/standings'
import { systemClock } from '@/lib/platform/clock'

export interface DiverRow {
  readonly href: string
  readonly name: string
  readonly squads: string
  readonly club: string
  readonly level: string
  readonly ready: readonly string[]
  readonly standsDown: boolean
  /** Incidents that wait to be cleared. */
  readonly incidents: number
  /** For the head coach: no consent to keep a record is in force. */
  readonly askConsent: boolean
}

/** The divers whom this actor may read, by club and name. */
export async function loadDivers(): Promise<{ readonly rows: readonly DiverRow[]; readonly clubs: number }> {
  const actor = await requireActor()
  if (!canCoach(actor) && !canReview(actor)) notFound()
  const scope = scopeOf(actor, systemClock())
  const { curriculum, divers } = await readStandings(scope)
  const toDo = await readToDo(
    scope,
    divers.map(({ id }) => id),
  )
  const rows = divers
    .map((diver): DiverRow => {
      const found = new Map(diver.rows.map((row) => [row.target, row]))
      const held = listTargets(curriculum).filter(
        (target) => target.startsWith('level:') && found.get(target)?.held !== 'no',
      )
      const highest = held.at(-1)
      return {
        href: `/desk/divers/${diver.id}`,
        name: `${diver.givenName} ${diver.familyName}`,
        squads: diver.squads.join(', '),
        club: diver.clubName,
        level: highest ? targetName(highest, { curriculum }) : 'no level yet',
        ready: listTargets(curriculum)
          .filter((target) => found.get(target)?.ready)
          .map((target) => targetName(target, { curriculum })),
        incidents: toDo.openIncidents(diver.id),
        askConsent: canDecide(actor, diver.club) && !toDo.consents(diver.id).record?.given,
        standsDown: diver.rows.some((row) =>
          row.waitsFor.some((one) => one.kind === 'block' && one.block === 'stand-down'),
        ),
      }
    })
    .sort((a, b) => a.club.localeCompare(b.club) || a.name.localeCompare(b.name))
  return { rows, clubs: new Set(rows.map((row) => row.club)).size }
}
