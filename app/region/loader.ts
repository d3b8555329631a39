import { type Scope, scopeOf } from '@/lib/access/scope'
import { requireReviewer } from '@/lib/access/session'
import { stepName, targetName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { readStandings, type Standings } from '@/lib/assessment/store/standings'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'
import { type DiverOnPathway, levelRows, moveRows, type PipelineRow, placeDiver } from '@/lib/reports/pipeline'

export interface Region {
  readonly programme: string
  readonly scope: Scope
  readonly desk: Standings
  readonly words: Words
  readonly divers: readonly DiverOnPathway[]
  readonly levels: readonly PipelineRow[]
  readonly moves: readonly PipelineRow[]
  readonly clubName: (club: string) => string
}

/** The region as of now, for the programme's reviewers. */
export async function loadRegion(): Promise<Region> {
  const actor = await requireReviewer()
  const scope = scopeOf(actor, systemClock())
  const desk = await readStandings(scope)
  const { curriculum } = desk
  const divers = desk.divers.map((diver) => placeDiver(curriculum, diver))
  const names = new Map(desk.divers.map((diver) => [diver.club, diver.clubName]))
  const clubs = [...names.keys()].sort((a, b) => (names.get(a) ?? '').localeCompare(names.get(b) ?? ''))
  return {
    programme: actor.programme.name,
    scope,
    desk,
    words: { curriculum, today: dayIn(scope.at, scope.zone) },
    divers,
    levels: levelRows(curriculum, clubs, divers),
    moves: moveRows(curriculum, clubs, divers),
    clubName: (club) => names.get(club) ?? 'a club',
  }
}

/** A step of either table as it is read: the level held, or the board move. */
export function stepLabel(step: string, curriculum: Curriculum): string {
  if (step === 'none') return 'no level yet'
  return step.startsWith('move:')
    ? stepName(step as TargetKey, { curriculum })
    : targetName(`level:${step}`, { curriculum })
}

/** The address of the list behind a number. */
export const listHref = (row: PipelineRow, figure: string): string =>
  `/region/list?${new URLSearchParams({ club: row.club, step: row.step, figure })}`
