import { coachingScopeOf } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { leadingPair } from '@/lib/assessment/evidence'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { readTarget } from '@/lib/assessment/readiness/targets'
import { dayName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import { readDesk } from '@/lib/assessment/store/reads'
import { readStandings } from '@/lib/assessment/store/standings'
import { asOfInstant } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface QueueRow {
  readonly href: string
  readonly diver: string
  readonly squads: string
  readonly step: string
  readonly since: string
  readonly arc: ArcSubject | null
  /** What the arc shows: a skill at a place. */
  readonly shown: string
}

export interface Queue {
  readonly ready: readonly QueueRow[]
  /** Approved levels and moves whose requirement fails now. */
  readonly toReview: readonly QueueRow[]
}

/** What waits for this head coach: ready targets first to become ready first, then what is to review. */
export async function loadQueue(): Promise<Queue> {
  const actor = await requireHeadCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const headed = new Set(actor.clubs.filter((post) => post.role === 'head').map((post) => post.club))
  const { divers } = await readStandings(scope)
  const rows = divers
    .filter((diver) => headed.has(diver.club))
    .flatMap((diver) => diver.rows.map((row) => ({ ...row, diver: diver.id })))
    .filter((row) => row.ready || row.held === 'to review')
  const { curriculum, files } = await readDesk(
    scope,
    rows.map((row) => row.diver),
  )
  const toRow = (row: (typeof rows)[number]): (QueueRow & { readonly order: number })[] => {
    const file = files.find((candidate) => candidate.id === row.diver)
    if (!file) return []
    const date = asOfInstant(scope.at, file.zone)
    const evaluation = evaluationOf(curriculum, file.record, date)
    const words: Words = { curriculum, today: date.day, diver: file.givenName }
    const { target } = row
    const pair = leadingPair(evaluation, readTarget(evaluation, target))
    const attempts = pair ? (evaluation.history(pair.key)?.attempts ?? []).slice(-pair.standard.of) : []
    const since = row.readySince ?? date.day
    return [
      {
        href: `/desk/queue/${file.id}/${encodeURIComponent(target)}`,
        diver: `${file.givenName} ${file.familyName}`,
        squads: file.squads.join(', '),
        step: stepName(target, words),
        since: dayName(since, words),
        arc: pair ? arcSubject(curriculum, pair, attempts, Math.max(pair.level, 0)) : null,
        shown: pair ? `${pair.skill.dive ?? pair.skill.title}` : '',
        order: since,
      },
    ]
  }
  const oldestFirst = (list: ReturnType<typeof toRow>) =>
    [...list].sort((a, b) => a.order - b.order || a.diver.localeCompare(b.diver))
  return {
    ready: oldestFirst(rows.filter((row) => row.ready).flatMap(toRow)),
    toReview: oldestFirst(rows.filter((row) => row.held === 'to review').flatMap(toRow)),
  }
}
