import type { PhaseView } from '@/lib/assessment/arc-subject'
import type { Rating } from '@/lib/curriculum/model'
import type { RatingRow, RatingSheet } from './rating-sheet'

interface Rated {
  readonly row: RatingRow
  readonly rating: Rating
  readonly how: 'seen' | 'imputed'
}

const shortfall = ({ row, rating }: Rated): number => Math.max(0, row.expected - rating)

/** Largest shortfall first, critical before others, then by key. */
const worstFirst = (a: Rated, b: Rated): number =>
  shortfall(b) - shortfall(a) ||
  Number(b.row.criterion.critical) - Number(a.row.criterion.critical) ||
  (a.row.criterion.key < b.row.criterion.key ? -1 : 1)

const spoken = (phase: string): string => phase.charAt(0).toUpperCase() + phase.slice(1)

/** What the rule shows of one attempt: a bob for each phase that was rated, an open one where the rest was as expected. */
export function phaseMarks(
  sheet: RatingSheet,
  ratings: Readonly<Record<string, Rating>>,
  restAsExpected: boolean,
): PhaseView[] {
  return sheet.phases.map(({ phase, rows, critical }) => {
    const all = [...critical, ...rows]
    const rated = all.flatMap((row): Rated[] => {
      const rating = ratings[row.criterion.key]
      if (rating !== undefined) return [{ row, rating, how: 'seen' }]
      const filled = restAsExpected && !row.criterion.critical && row.expected > 0
      return filled ? [{ row, rating: row.expected, how: 'imputed' }] : []
    })
    const [shown] = rated.sort(worstFirst)
    return {
      phase,
      label: spoken(phase),
      criterion: shown?.row.criterion.title ?? null,
      rating: shown?.rating ?? null,
      expected: shown?.row.expected ?? highest(all),
      how: shown?.how ?? 'not watched',
      critical: critical.length > 0,
      showsCritical: shown?.row.criterion.critical ?? false,
    }
  })
}

/** The highest rating that any of the rows asks. */
const highest = (rows: readonly RatingRow[]): Rating =>
  rows.map(({ expected }) => expected).sort((a, b) => b - a)[0] ?? 0
