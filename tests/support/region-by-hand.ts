import { datesOf, standingOf } from '@/lib/assessment/readiness/target-standing'
import { listTargets } from '@/lib/assessment/readiness/targets'
import type { TargetKey } from '@/lib/assessment/record'
import type { DiverFile } from '@/lib/assessment/store/records'
import { asOfInstant, dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { type AgeBand, ageBandOf } from '@/lib/reports/age-band'
import type { Figure } from '@/lib/reports/pathway'

/** Where one diver stands, from her raw rows and by the evaluator alone: no kept row, no table. */
export interface StandsByHand {
  readonly id: string
  readonly club: string
  readonly age: AgeBand
  /** The level held by key, or 'none'. */
  readonly level: string
  readonly next: Figure
  readonly figures: ReadonlyMap<TargetKey, Figure>
}

/** Evaluates every target of a diver and says where she stands. */
export function standsByHand(curriculum: Curriculum, file: DiverFile, now: number): StandsByHand {
  const dates = datesOf(curriculum, file.record, asOfInstant(now, file.zone), file.zone)
  const figures = new Map(
    listTargets(curriculum).map((target): [TargetKey, Figure] => {
      const { standing, found } = standingOf(dates, target)
      const { held } = found
      return [target, held === 'to review' ? held : held === 'no' ? standing : 'held']
    }),
  )
  const isHeld = (level: string) => ['held', 'to review'].includes(figures.get(`level:${level}`) ?? '')
  const levels = curriculum.levels.map(({ key }) => key)
  const last = levels.findLastIndex(isHeld)
  const next = levels[last + 1]
  return {
    id: file.id,
    club: file.club,
    age: ageBandOf(file.record.born, dayIn(now, file.zone)),
    level: levels[last] ?? 'none',
    next: (next && figures.get(`level:${next}`)) || 'held',
    figures,
  }
}

/** The ids of those whom a test picks out, sorted. */
export const idsWhere = (all: readonly StandsByHand[], picks: (one: StandsByHand) => boolean): string[] =>
  all
    .filter(picks)
    .map(({ id }) => id)
    .sort()
