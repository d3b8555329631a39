import type { Curriculum } from '../../curriculum/edition/curriculum'
import { type Entry, entriesAt } from '../../curriculum/event/entry'
import { cheapestList } from '../../curriculum/event/legal-list'
import type { Event } from '../../curriculum/event/model'
import { attemptsOf, both, done, plansOf, type Ways } from './ways'

// A decision weighs less than any attempt.
const attempt = 1000
const costOf = (ways: Exclude<Ways, { never: unknown }>): number =>
  Math.min(...plansOf(ways).map((plan) => attemptsOf(plan) * attempt + plan.decisions.size))

/**
 * Ways to the list that is cheapest when each dive is priced by itself; null when no list is legal with all that can be
 * learned. An upper bound, said to be one: dives that rest on the same work may make another list cheaper.
 */
export function listWays(event: Event, curriculum: Curriculum, waysTo: (entry: Entry) => Ways): Ways | null {
  const offers = entriesAt(curriculum, event.place).flatMap((entry) => {
    const ways = waysTo(entry)
    return 'never' in ways ? [] : [{ entry, ways, cost: costOf(ways) }]
  })
  const list = cheapestList(event.parts, offers)
  if (!list) return null
  const chosen = new Set(list.map(({ entry }) => entry))
  const all = offers
    .filter(({ entry }) => chosen.has(entry))
    .reduce<Ways>((ways, offer) => both(ways, offer.ways), done)
  return 'never' in all ? all : { ...all, exact: false }
}
