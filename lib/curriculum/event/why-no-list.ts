import type { Tenths } from '../dives/components'
import { fillsEasily } from './easy-list'
import type { Entry } from './entry'
import { cheapestList, leastDifficulty } from './legal-list'
import type { EventPart } from './model'

/** Why no list of the given dives is legal. `part` is an index into the event's parts; difficulties are tenths. */
export type WhyNoList =
  | { readonly kind: 'too few dives'; readonly held: number; readonly wanted: number }
  | { readonly kind: 'too few families'; readonly part: number; readonly held: number; readonly wanted: number }
  | { readonly kind: 'families shared' }
  | { readonly kind: 'over the cap'; readonly part: number; readonly least: Tenths; readonly cap: Tenths }
  | { readonly kind: 'caps shared' }

const uncapped = (parts: readonly EventPart[]): EventPart[] => parts.map((part) => ({ ...part, difficultyCap: null }))

/**
 * Every reason why the dives make no legal list: too few numbers, too few families in a part, or a cap below the least
 * that a part comes to. 'shared': each part could be filled by itself, all of them together cannot. Empty when one is legal.
 */
export function whyNoList(parts: readonly EventPart[], entries: readonly Entry[]): WhyNoList[] {
  if (fillsEasily(parts, entries)) return []
  const offers = entries.map((entry) => ({ entry, cost: 0 }))
  const wanted = parts.reduce((sum, { count }) => sum + count, 0)
  const held = new Set(entries.map(({ number }) => number)).size
  const families = new Set(entries.map(({ family }) => family)).size
  const short: WhyNoList[] = [
    ...(held < wanted ? [{ kind: 'too few dives', held, wanted } as const] : []),
    ...parts.flatMap(({ distinctFamilies }, part): WhyNoList[] =>
      families < distinctFamilies ? [{ kind: 'too few families', part, held: families, wanted: distinctFamilies }] : [],
    ),
  ]
  if (short.length > 0) return short
  if (!cheapestList(uncapped(parts), offers)) return [{ kind: 'families shared' }]
  const over = parts.flatMap(({ difficultyCap: cap }, part): WhyNoList[] => {
    const least = cap === null ? null : leastDifficulty(parts, offers, part)
    return cap === null || least === null || least <= cap ? [] : [{ kind: 'over the cap', part, least, cap }]
  })
  if (over.length > 0 || cheapestList(parts, offers)) return over
  return [{ kind: 'caps shared' }]
}
