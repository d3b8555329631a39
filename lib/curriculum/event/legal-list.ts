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
  readonly places: Places
  /** By part: difficulty so far, in tenths; 0 where nothing limits it. */
  readonly sums: readonly Tenths[]
  readonly cost: number
  readonly size: number
  /** The last dive chosen, and the draft before it. */
  readonly last: { readonly listed: Listed; readonly before: Draft } | null
}

/** The places filled, a byte a part: dives (four bits), families up to those asked (three), whether the one in hand is among them. */
type Places = number
const divesIn = (places: Places, part: number): number => (places >> (8 * part)) & 15
const familiesIn = (places: Places, part: number): number => (places >> (8 * part + 4)) & 7
const hasThis = (places: Places, part: number): boolean => ((places >> (8 * part + 7)) & 1) === 1
const withoutThis = (places: Places): Places => places & 0x7f7f7f

/** The draft with one more dive in a part; null when the part is full or its cap does not allow it. */
function withDive(draft: Draft, { entry, cost }: Offer, part: number, wanted: Wanted): Draft | null {
  const { count, distinctFamilies, difficultyCap } = wanted
  const { places, sums } = draft
  const sum = difficultyCap === null ? 0 : (sums[part] ?? 0) + entry.tenths
  if (divesIn(places, part) >= count || sum > (difficultyCap ?? 0)) return null
  const fresh = !hasThis(places, part)
  const counted = fresh && familiesIn(places, part) < distinctFamilies
  return {
    places: places + (1 << (8 * part)) + (counted ? 1 << (8 * part + 4) : 0) + (fresh ? 1 << (8 * part + 7) : 0),
    sums: difficultyCap === null ? sums : sums.map((old, index) => (index === part ? sum : old)),
    cost: draft.cost + cost,
    size: draft.size + 1,
    last: { listed: { entry, part }, before: draft },
  }
}

/** The dives of a draft in the order in which they were chosen. */
function chosenIn(draft: Draft): Listed[] {
  const chosen: Listed[] = []
  for (let last = draft.last; last; last = last.before.last) chosen.push(last.listed)
  return chosen.reverse()
}

const noDearer = (a: Draft, b: Draft): boolean =>
  a.cost <= b.cost && a.sums.every((sum, part) => sum <= (b.sums[part] ?? 0))

/** Of the drafts that fill the same places, those that no other one makes needless; the first of equals. */
function worthKeeping(drafts: readonly Draft[]): Draft[] {
  const kept = new Map<Places, Draft[]>()
  for (const draft of drafts) {
    const rivals = kept.get(draft.places)
    if (!rivals) kept.set(draft.places, [draft])
    else if (!rivals.some((rival) => noDearer(rival, draft)))
      kept.set(draft.places, [...rivals.filter((rival) => !noDearer(draft, rival)), draft])
  }
  return [...kept.values()].flat()
}

/** Of the drafts that fill the same places, the cheapest alone: quick, and of the lists that it leads to some are legal. */
function cheapestOnly(drafts: readonly Draft[]): Draft[] {
  const kept = new Map<Places, Draft>()
  for (const draft of drafts) {
    const rival = kept.get(draft.places)
    if (!rival || draft.cost < rival.cost || (draft.cost === rival.cost && noDearer(draft, rival)))
      kept.set(draft.places, draft)
  }
  return [...kept.values()]
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

/** For each number of dives still to come, the least that they can cost, from the numbers at `from` on. */
function leastCosts(numbers: readonly (readonly Offer[])[], from: number): number[] {
  const costs = numbers.slice(from).map((number) => Math.min(...number.map(({ cost }) => cost)))
  const sums = [0]
  for (const cost of costs.sort((a, b) => a - b)) sums.push((sums.at(-1) ?? 0) + cost)
  return sums
}

/** The lists that fill the parts; `keep` says which drafts are carried on, and none goes on that will cost more than `most`. */
function fullLists(
  parts: readonly Wanted[],
  offers: readonly Offer[],
  keep: (drafts: readonly Draft[]) => Draft[],
  most = Number.POSITIVE_INFINITY,
): Draft[] {
  const total = parts.reduce((sum, { count }) => sum + count, 0)
  const families = byFamily(offers)
  const numbers = families.flat()
  let drafts: Draft[] = [{ places: 0, sums: parts.map(() => 0), cost: 0, size: 0, last: null }]
  let next = 0
  for (const family of families) {
    drafts = drafts.map((draft) => ({ ...draft, places: withoutThis(draft.places) }))
    for (const number of family) {
      const toCome = leastCosts(numbers, ++next)
      const longer = drafts.flatMap((draft) =>
        parts.flatMap((part, index) => number.flatMap((offer) => withDive(draft, offer, index, part) ?? [])),
      )
      const going = [...drafts, ...longer].filter(({ size, cost }) => {
        const least = toCome[total - size]
        return least !== undefined && cost + least <= most
      })
      drafts = keep(going)
    }
  }
  return drafts.filter(({ size, places }) => {
    return size === total && parts.every(({ distinctFamilies }, part) => familiesIn(places, part) >= distinctFamilies)
  })
}

const cheapest = (lists: readonly Draft[]): Draft | null =>
  lists.reduce<Draft | null>((best, list) => (best && best.cost <= list.cost ? best : list), null)

/**
 * The cheapest legal list: every part filled, from as many families as it asks, within its cap, and no dive number
 * twice in the whole list. Exact: all drafts that could still be best are carried on. Null when no list is legal.
 */
export function cheapestList(parts: readonly EventPart[], offers: readonly Offer[]): readonly Listed[] | null {
  const quick = cheapest(fullLists(parts, offers, cheapestOnly))
  const best = quick?.cost === 0 ? quick : cheapest(fullLists(parts, offers, worthKeeping, quick?.cost))
  return best && chosenIn(best)
}

/** The least difficulty that one part can have in a list that is legal but for its caps; null when no such list is. */
export function leastDifficulty(parts: readonly EventPart[], offers: readonly Offer[], part: number): Tenths | null {
  const wanted = parts.map((one, index) => ({
    ...one,
    difficultyCap: index === part ? Number.POSITIVE_INFINITY : null,
  }))
  const free = offers.map(({ entry }) => ({ entry, cost: 0 }))
  const sums = fullLists(wanted, free, worthKeeping).map((list) => list.sums[part] ?? 0)
  return sums.length === 0 ? null : Math.min(...sums)
}
