import { notFound } from 'next/navigation'
import { canCoach, canReview } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import { targetName } from '@/lib/assessment/readiness/wording'
import { readDesk } from '@/lib/assessment/store/reads'
import { asOfInstant } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface DiverRow {
  readonly href: string
  readonly name: string
  readonly squads: string
  readonly club: string
  readonly level: string
  readonly ready: readonly string[]
  readonly standsDown: boolean
}

/** The divers whom this actor may read, by club and name. */
export async function loadDivers(): Promise<{ readonly rows: readonly DiverRow[]; readonly clubs: number }> {
  const actor = await requireActor()
  if (!canCoach(actor) && !canReview(actor)) notFound()
  const scope = scopeOf(actor, systemClock())
  const { curriculum, files } = await readDesk(scope)
  const rows = files
    .map((file): DiverRow => {
      const evaluation = evaluationOf(curriculum, file.record, asOfInstant(scope.at, file.zone))
      const found = listTargets(curriculum).map((target) => readTarget(evaluation, target))
      const held = found.filter((one) => one.target.startsWith('level:') && one.held !== 'no').at(-1)
      return {
        href: `/desk/divers/${file.id}`,
        name: `${file.givenName} ${file.familyName}`,
        squads: file.squads.join(', '),
        club: file.clubName,
        level: held ? targetName(held.target, { curriculum }) : 'no level yet',
        ready: found.filter((one) => one.ready).map((one) => targetName(one.target, { curriculum })),
        standsDown: found.some((one) => one.blocks.some((block) => block.kind === 'stand-down')),
      }
    })
    .sort((a, b) => a.club.localeCompare(b.club) || a.name.localeCompare(b.name))
  return { rows, clubs: new Set(rows.map((row) => row.club)).size }
}
