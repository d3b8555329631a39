import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { families } from '../dives/model'
import type { Entry } from './entry'
import { cheapestList, type Listed, leastDifficulty, type Offer } from './legal-list'
import type { EventPart } from './model'
import { whyNoList } from './why-no-list'

const entry = (family: number, number: number, tenths: number): Entry => ({
  pair: `${family}${number}-${tenths}@1m`,
  family: families[family] ?? 'forward',
  number: `${family}${number}`,
  tenths,
  leaf: { kind: 'signOff', skill: `${family}${number}-${tenths}`, place: '1m' },
})

const offer = fc
  .record({ family: fc.nat(3), number: fc.nat(2), tenths: fc.integer({ min: 10, max: 24 }), cost: fc.nat(2) })
  .map(({ family, number, tenths, cost }): Offer => ({ entry: entry(family, number, tenths), cost }))
const offers = fc.array(offer, { maxLength: 8 })
const part = fc
  .record({
    count: fc.integer({ min: 1, max: 3 }),
    distinctFamilies: fc.integer({ min: 1, max: 3 }),
    difficultyCap: fc.option(fc.integer({ min: 10, max: 50 })),
  })
  .map((one): EventPart => one)
const parts = fc.array(part, { minLength: 1, maxLength: 2 })

/** Every way to put each offer into one of the parts or into none. */
function everyList(parts: readonly EventPart[], offers: readonly Offer[]): { list: Listed[]; cost: number }[] {
  return offers.reduce<{ list: Listed[]; cost: number }[]>(
    (lists, { entry, cost }) =>
      lists.flatMap((one) => [
        one,
        ...parts.map((_, part) => ({ list: [...one.list, { entry, part }], cost: one.cost + cost })),
      ]),
    [{ list: [], cost: 0 }],
  )
}

function isLegal(parts: readonly EventPart[], list: readonly Listed[], caps = true): boolean {
  const numbers = new Set(list.map(({ entry }) => entry.number))
  return (
    numbers.size === list.length &&
    parts.every(({ count, distinctFamilies, difficultyCap }, part) => {
      const own = list.filter((one) => one.part === part).map(({ entry }) => entry)
      const sum = own.reduce((tenths, one) => tenths + one.tenths, 0)
      const enough = own.length === count && new Set(own.map(({ family }) => family)).size >= distinctFamilies
      return enough && (!caps || difficultyCap === null || sum <= difficultyCap)
    })
  )
}

const sumOf = (list: readonly Listed[], part: number): number =>
  list.filter((one) => one.part === part).reduce((tenths, { entry }) => tenths + entry.tenths, 0)

describe('the cheapest legal list', () => {
  const runs = { seed: 20261101, numRuns: 300 }

  it('is legal, and no cheaper one is found by trying every list', () => {
    let found = 0
    fc.assert(
      fc.property(parts, offers, (parts, offers) => {
        const legal = everyList(parts, offers).filter(({ list }) => isLegal(parts, list))
        const list = cheapestList(parts, offers)
        expect(list === null).toBe(legal.length === 0)
        if (list === null) return
        found++
        const cost = list.reduce((sum, one) => sum + (offers.find(({ entry }) => entry === one.entry)?.cost ?? 0), 0)
        expect(isLegal(parts, list)).toBe(true)
        expect(cost).toBe(Math.min(...legal.map((one) => one.cost)))
      }),
      runs,
    )
    expect(found).toBeGreaterThan(40)
  })

  it('stays legal to have with one dive more, and the least difficulty of a part is that of trying every list', () => {
    fc.assert(
      fc.property(parts, offers, offer, (parts, offers, more) => {
        if (cheapestList(parts, offers)) expect(cheapestList(parts, [...offers, more])).not.toBeNull()
        const lists = everyList(parts, offers).filter(({ list }) => isLegal(parts, list, false))
        const least = lists.length === 0 ? null : Math.min(...lists.map(({ list }) => sumOf(list, 0)))
        expect(leastDifficulty(parts, offers, 0)).toBe(least)
      }),
      runs,
    )
  })

  it('gives a reason just when there is none', () => {
    const kinds = new Map<string, number>()
    fc.assert(
      fc.property(parts, offers, (parts, offers) => {
        const why = whyNoList(
          parts,
          offers.map(({ entry }) => entry),
        )
        // More families than dives are the linter's to refuse.
        if (parts.some(({ count, distinctFamilies }) => distinctFamilies > count)) return
        expect(why.length === 0).toBe(cheapestList(parts, offers) !== null)
        for (const { kind } of why) kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
      }),
      { ...runs, numRuns: 1500 },
    )
    expect([...kinds.keys()].sort()).toEqual([
      'caps shared',
      'families shared',
      'over the cap',
      'too few dives',
      'too few families',
    ])
  })

  it('is found among all the dives of two positions at once', () => {
    const many = families
      .slice(0, 5)
      .flatMap((_, family) =>
        Array.from({ length: 6 }, (_, number) => [10, 13].map((tenths) => entry(family, number, tenths + number * 2))),
      )
    const offers = many.flat().map((one, index) => ({ entry: one, cost: (index * 7) % 11 }))
    const list = cheapestList(
      [
        { count: 5, distinctFamilies: 5, difficultyCap: 75 },
        { count: 5, distinctFamilies: 4, difficultyCap: null },
      ],
      offers,
    )
    expect(list).toHaveLength(10)
  })
})
