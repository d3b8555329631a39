import type { CoachScope } from '../../../generated/prisma/client'
import type { Pair } from '../../curriculum/edition/curriculum'

/** Whether a pair lies within a coach's scope in a club at an instant. The latest row counts; none means everything. */
export function isWithinScope(rows: readonly CoachScope[], club: string, pair: Pair, at: number): boolean {
  const row = rows
    .filter((scope) => scope.clubId === club && scope.setAt.getTime() <= at)
    .sort((a, b) => a.setAt.getTime() - b.setAt.getTime())
    .at(-1)
  if (!row) return true
  if (row.until && row.until.getTime() < at) return false
  return row.families.includes(pair.skill.family) && row.places.includes(pair.holding.place)
}
