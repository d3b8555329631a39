import type { ObservationItem } from '../../lib/assessment/deck/contract'
import type { Curriculum, Pair } from '../../lib/curriculum/edition/curriculum'
import { type Rating, ratings } from '../../lib/curriculum/model'
import { listOfKind } from '../../lib/curriculum/requirement/references'
import { listTargets } from '../../lib/curriculum/tree/target'
import type { Quality } from './ability'
import type { Chance } from './chance'
import type { CoachData } from './coast'

/** What one coach put down of one attempt. */
export type Seen = Pick<ObservationItem, 'ratings' | 'restAsExpected' | 'faults'>

/** Criteria that some requirement counts by themselves: coaches here rate them whenever they apply. */
export const watchedIn = (curriculum: Curriculum): ReadonlySet<string> =>
  new Set(
    listTargets(curriculum)
      .flatMap(({ requirement }) => (requirement ? listOfKind(requirement, 'criterion') : []))
      .map(({ node }) => node.criterion),
  )

const asRating = (quality: number): Rating => ratings[Math.max(0, Math.min(4, Math.round(quality)))] ?? 0

export interface Look {
  readonly pair: Pair
  /** Index of the level that the diver is judged against. */
  readonly level: number
  readonly quality: Quality
  readonly coach: CoachData
  readonly watched: ReadonlySet<string>
  /** What was seen for certain, whatever the usual. */
  readonly known: Readonly<Record<string, Rating>>
}

/** Rates by exception: what is critical always, the rest when it is short of what is expected, sometimes when it is better. */
export function rate(look: Look, chance: Chance): Seen {
  const everything = chance.happens(look.coach.thorough)
  const rated: Record<string, Rating> = {}
  const faults: string[] = []
  for (const { criterion, expects } of look.pair.criteria) {
    const expected = expects[look.level] ?? 0
    const seen =
      look.known[criterion.key] ??
      asRating((look.quality.get(criterion.key) ?? 0) + look.coach.leaning + chance.normal(0.12))
    const sure = criterion.critical || look.watched.has(criterion.key) || criterion.key in look.known
    const short = seen < expected
    if (sure || short || everything || (seen > expected && expected > 0 && chance.happens(0.12)))
      rated[criterion.key] = seen
    const fault = criterion.faults[chance.happens(0.7) ? 0 : criterion.faults.length - 1]
    if (fault && (short || seen < 2) && chance.happens(0.85)) faults.push(fault)
  }
  return { ratings: rated, restAsExpected: !everything && chance.happens(0.97), faults: [...new Set(faults)] }
}
