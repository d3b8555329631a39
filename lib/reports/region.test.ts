import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { historyOver } from '../../tests/support/histories'
import { endOf } from '../../tests/support/record'
import { coast, today } from '../../tests/support/small-coast'
import { standingRow } from '../assessment/readiness/standing-row'
import { datesOf } from '../assessment/readiness/target-standing'
import { listTargets } from '../assessment/readiness/targets'
import { parseDay } from '../assessment/time'
import { ageBandOf, ageBands } from './age-band'
import { exportable, exportLines } from './export'
import { diversIn, everybody, levelHeld, movesIn, waitIn } from './filter'
import { askedSteps, listed } from './listed'
import { withheldMark } from './outgoing-table'
import { type DiverOnPathway, figures, placeDiver } from './pathway'
import { type Query, readListQuery, readRegionQuery, writeQuery } from './query'
import { groupings, levelTable, moveTable, narrowed } from './tables'
import { countWaits } from './waits'

const clubs = ['here', 'there']
const moves = movesIn(coast, everybody)

const divers = fc.array(fc.tuple(historyOver(coast, 10), fc.constantFrom(...clubs)), { maxLength: 6 }).map((drawn) =>
  drawn.map(([record, club], index) => {
    const dates = datesOf(coast, record, endOf(today), 'UTC')
    const rows = listTargets(coast).map((target) => standingRow(dates, target))
    return placeDiver(coast, { id: `d${index}`, club, born: record.born, rows }, today)
  }),
)
/** A choice that is mostly not made, or hardly anybody would be left. */
const seldom = <Value>(of: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: of })
const filter = fc.record({
  club: seldom(fc.constantFrom(...clubs)),
  level: seldom(fc.constantFrom('none', 'one', 'two')),
  age: seldom(fc.constantFrom(...ageBands)),
  family: seldom(fc.constantFrom('forward' as const, 'safety' as const)),
  place: seldom(fc.constantFrom('1m' as const, '3m' as const)),
})
const by = fc.constantFrom(...groupings)
const runs = { seed: 20261127, numRuns: 40 }

/** An address as the framework reads it. */
const asQuery = (address: string): Query => Object.fromEntries(new URLSearchParams(address))
const idsIn = (all: readonly DiverOnPathway[], address: string): string[] => {
  const query = readListQuery(asQuery(address), coast, clubs)
  if (!query) throw new Error(`no list at ${address}`)
  return listed(coast, all, query).map(({ id }) => id)
}

describe('the region', () => {
  it('counts each diver once a table, and every number is the length of the list at its address', () => {
    fc.assert(
      fc.property(divers, filter, by, (all, filter, by) => {
        const here = diversIn(coast, all, filter)
        const subject = { curriculum: coast, clubs, divers: here, filter }
        const levels = levelTable(subject, by)
        expect(levels.flatMap((row) => row.divers).sort()).toEqual(here.map(({ id }) => id).sort())
        for (const row of [...levels, ...moveTable(subject, moves, by)]) {
          expect([...row.figures.values()].flat().sort()).toEqual([...row.divers].sort())
          const address = (figure: string) =>
            writeQuery({ ...narrowed({ ...filter, family: null, place: null }, row), of: row.move ?? 'level', figure })
          for (const figure of figures) expect(idsIn(all, address(figure))).toEqual(row.figures.get(figure))
          expect(idsIn(all, address('divers'))).toEqual(row.divers)
          if (row.move === null) expect(idsIn(all, address('level to review'))).toEqual(row.toReview)
        }
      }),
      runs,
    )
  })

  it('counts what is waited for as long as the lists behind it, by family and place too', () => {
    let found = 0
    fc.assert(
      fc.property(divers, filter, fc.boolean(), (all, filter, ofMoves) => {
        const asked = ofMoves ? movesIn(coast, filter) : null
        const steps = askedSteps(diversIn(coast, all, filter), asked)
        for (const wait of countWaits(steps, (what) => waitIn(coast, filter, what))) {
          const address = { ...filter, of: ofMoves ? 'moves' : 'level', waits: wait.code }
          expect(idsIn(all, writeQuery(address))).toEqual(wait.divers)
          expect(idsIn(all, writeQuery({ ...address, figure: 'held up' }))).toEqual(wait.heldUp)
          found++
        }
      }),
      runs,
    )
    expect(found).toBeGreaterThan(30)
  })

  it('narrows by each choice, and by all of them together', () => {
    fc.assert(
      fc.property(divers, filter, (all, filter) => {
        const chosen = diversIn(coast, all, filter)
        const { club, level, age } = filter
        const each = all.filter(
          (diver) =>
            (club === null || diver.club === club) &&
            (level === null || levelHeld(coast, diver) === level) &&
            (age === null || diver.age === age),
        )
        expect(chosen).toEqual(each)
      }),
      runs,
    )
    expect(movesIn(coast, { ...everybody, family: 'safety' })).toEqual([])
    expect(movesIn(coast, { ...everybody, family: 'forward', place: '3m' })).toEqual(['move:forward:3m'])
  })
})

describe('an address of the region', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(filter, by, fc.option(fc.constantFrom(...figures)), (filter, by, sort) => {
        const query = readRegionQuery(asQuery(writeQuery({ ...filter, by, sort })), coast, clubs)
        expect(query).toEqual({ filter, by, sort })
      }),
      runs,
    )
    expect(readRegionQuery({}, coast, clubs)).toEqual({ filter: everybody, by: 'step', sort: null })
    expect(readRegionQuery({ club: '' }, coast, clubs)?.filter).toEqual(everybody)
  })

  it.each<Query>([
    { club: 'elsewhere' },
    { level: 'four' },
    { age: '12' },
    { family: 'sideways' },
    { place: '2m' },
    { by: 'coach' },
    { sort: 'name' },
    { club: ['here', 'there'] },
  ])('that names what does not exist leads nowhere: %j', (query) => {
    expect(readRegionQuery(query, coast, clubs)).toBeNull()
  })

  it('of a list names what it is of', () => {
    const list = (query: Query) => readListQuery(query, coast, clubs)
    expect(list({ of: 'level' })).toBeNull()
    expect(list({ figure: 'ready' })).toBeNull()
    expect(list({ of: 'move:back:3m', figure: 'ready' })).toBeNull()
    expect(list({ of: 'level', figure: 'ready', page: '3' })).toMatchObject({ moves: null, figure: 'ready', page: 3 })
    expect(list({ of: 'moves', waits: 'age', page: '-1' })).toMatchObject({ moves, waits: 'age', page: 1 })
  })
})

describe('ages', () => {
  it('are those of 31 December of the year', () => {
    const day = parseDay('2026-03-14')
    expect(ageBandOf(parseDay('2012-12-31'), day)).toBe('14-15')
    expect(ageBandOf(parseDay('2013-01-01'), day)).toBe('12-13')
    expect(ageBandOf(parseDay('2017-01-01'), day)).toBe('to 9')
    expect(ageBandOf(parseDay('2016-12-31'), day)).toBe('10-11')
    expect(ageBandOf(parseDay('2007-12-31'), day)).toBe('19 on')
    expect(ageBandOf(null, day)).toBe('unknown')
  })
})

describe('what is taken along', () => {
  const named = {
    rowName: ({ narrows }: { narrows: Partial<typeof everybody> }) => Object.values(narrows).join(),
    moveName: (move: string) => move,
    waitName: ({ code }: { code: string }) => code,
  }
  const linesOf = (all: readonly DiverOnPathway[], own: readonly string[] = []) =>
    exportable.flatMap((of) =>
      groupings.flatMap((by) => exportLines({ curriculum: coast, clubs, divers: all, own, ...named }, of, by)),
    )

  it('has lines of one width under their heads, and no number below five of other clubs', () => {
    fc.assert(
      fc.property(divers, (all) => {
        for (const of of exportable)
          for (const by of groupings) {
            const [heads = [], ...lines] = exportLines(
              { curriculum: coast, clubs, divers: all, own: [], ...named },
              of,
              by,
            )
            for (const line of lines) expect(line).toHaveLength(heads.length)
          }
        const numbers = linesOf(all)
          .flat()
          .filter((cell) => typeof cell === 'number')
        expect(numbers.filter((number) => number < 5)).toEqual([])
      }),
      runs,
    )
  })

  it("tells a coach her own club's figures", () => {
    const [diver] = fc.sample(divers, { seed: 3, numRuns: 40 }).flat()
    if (!diver) throw new Error('nobody was drawn')
    const lines = exportLines(
      { curriculum: coast, clubs, divers: [{ ...diver, club: 'here' }], own: ['here'], ...named },
      'level',
      'club',
    )
    expect(lines.find(([label]) => label === 'here')?.at(-1)).toBe(1)
    expect(lines.find(([label]) => label === 'there')?.at(-1)).toBe(withheldMark)
  })
})
