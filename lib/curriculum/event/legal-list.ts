import type { Tenths } from '../dives/components'
import type { Entry } from './entry'
import type { EventPart } from './model'

/** A dive that may be entered, and what it costs to enter it: 0 when it is at hand. Any non-negative number. */
export interface Offer {
  readonly entry: Entry
  readonly cost: number
}

/** A dive of a list, with the index of the part that it stands in. */
export interface Listed {
  readonly entry: Entry
  readonly part: number
}

/** What the search is asked: as a part of an event, but a cap may be Infinity, and is then only added up. */
type Wanted = Omit<EventPart, 'difficultyCap'> & { readonly difficultyCap: number | null }

/** A list as far as it has come. Of two with the same places filled, one that is no dearer by any sum makes the other needless. */
interface Draft {
  /** By part: dives chosen, families among them (no more than are asked), and whether the family in hand is one. */
  readonly counts: readonly number[]
  readonly families: readonly number[]
  readonly here: readonly boolean[]
  /** By part: difficulty so far, in tenths; 0 where nothing limits it. */
  readonly sums: readonly Tenths[]
  readonly cost: number
  readonly chosen: readonly Listed[]
}

const replaced = <Item>(items: readonly Item[], at: number, item: Item): Item[] =>
  items.map((old, index) => (index === at ? item : old))

/** The draft with one more dive in a part; null when the part is full or its cap does not allow it. */
function withDive(draft: Draft, { entry, cost }: Offer, part: number, wanted: Wanted): Draft | null {
  const { count, distinctFamilies, difficultyCap } = wanted
  const filled = draft.counts[part] ?? 0
  const sum = difficultyCap === null ? 0 : (draft.sums[part] ?? 0) + entry.tenths
  if (filled >= count || sum > (difficultyCap ?? 0)) return null
  const fresh = draft.here[part] ? 0 : 1
  return {
    counts: replaced(draft.counts, part, filled + 1),
    families: replaced(draft.families, part, Math.min(distinctFamilies, (draft.families[part] ?? 0) + fresh)),
    here: replaced(draft.here, part, true),
    sums: replaced(draft.sums, part, sum),
    cost: draft.cost + cost,
    chosen: [...draft.chosen, { entry, part }],
  }
}

const noDearer = (a: Draft, b: Draft): boolean =>
  a.cost <= b.cost && a.sums.every((sum, part) => sum <= (b.sums[part] ?? 0))

/** Keeps, of the drafts that fill the same places, those that no other one makes needless; the first of equals. */
function worthKeeping(drafts: readonly Draft[]): Draft[] {
  const kept = new Map<string, Draft[]>()
  for (const draft of drafts) {
    const key = `${draft.counts}|${draft.families}|${draft.here}`
    const rivals = kept.get(key) ?? []
    if (rivals.some((rival) => noDearer(rival, draft))) continue
    kept.set(key, [...rivals.filter((rival) => !noDearer(draft, rival)), draft])
  }
  return [...kept.values()].flat()
}

/** The offers by family and, within it, by number: of a number one dive at most is entered. */
function byFamily(offers: readonly Offer[]): Offer[][][] {
  const families = new Map<string, Map<string, Offer[]>>()
  for (const offer of offers) {
    const { family, number } = offer.entry
    const numbers = families.get(family) ?? new Map<string, Offer[]>()
    families.set(family, numbers)
    numbers.set(number, [...(numbers.get(number) ?? []), offer])
  }
  return [...families.values()].map((numbers) => [...numbers.values()].map(withoutDearer))
}

/** Of the positions of one number those that are easier, or cheaper, than every other. */
const withoutDearer = (number: readonly Offer[]): Offer[] =>
  number.filter((offer, index) =>
    number.every(
      (other, at) =>
        at === index ||
        other.entry.tenths > offer.entry.tenths ||
        other.cost > offer.cost ||
        (other.entry.tenths === offer.entry.tenths && other.cost === offer.cost && at > index),
    ),
  )

/** Every list that fills the parts, but for those that another one makes needless by all its sums and its cost. */
function fullLists(parts: readonly Wanted[], offers: readonly Offer[]): Draft[] {
  const total = parts.reduce((sum, { count }) => sum + count, 0)
  const families = byFamily(offers)
  let left = families.reduce((sum, numbers) => sum + numbers.length, 0)
  const none = parts.map(() => 0)
  let drafts: Draft[] = [{ counts: none, families: none, here: [], sums: none, cost: 0, chosen: [] }]
  for (const numbers of families) {
    drafts = drafts.map((draft) => ({ ...draft, here: parts.map(() => false) }))
    for (const number of numbers) {
      left--
      const longer = drafts.flatMap((draft) =>
        parts.flatMap((part, index) => number.flatMap((offer) => withDive(draft, offer, index, part) ?? [])),
      )
      drafts = worthKeeping([...drafts, ...longer]).filter(({ chosen }) => chosen.length + left >= total)
    }
  }
  return drafts.filter(({ chosen, families }) => {
    return chosen.length === total && parts.every((part, index) => (families[index] ?? 0) >= part.distinctFamilies)
  })
}

/**
 * The cheapest legal list: every part filled, from as many families as it asks, within its cap, and no dive number
 * twice in the whole list. Exact: all drafts that could still be best are carried on. Null when no list is legal.
 */
export function cheapestList(parts: readonly EventPart[], offers: readonly Offer[]): readonly Listed[] | null {
  const lists = fullLists(parts, offers)
  const [first, ...rest] = lists
  if (!first) return null
  return rest.reduce((best, list) => (list.cost < best.cost ? list : best), first).chosen
}

/** The least difficulty that one part can have in a list that is legal but for its caps; null when no such list is. */
export function leastDifficulty(parts: readonly EventPart[], offers: readonly Offer[], part: number): Tenths | null {
  const wanted = parts.map((one, index) => ({
    ...one,
    difficultyCap: index === part ? Number.POSITIVE_INFINITY : null,
  }))
  const sums = fullLists(
    wanted,
    offers.map(({ entry }) => ({ entry, cost: 0 })),
  ).map((list) => list.sums[part] ?? 0)
  return sums.length === 0 ? null : Math.min(...sums)
}
