import { describe, expect, it } from 'vitest'
import { tinyEdition, tinyPlace } from '@/tests/support/tiny-edition'
import { indexEdition } from '../edition/index-edition'
import type { EditionDocument, Skill } from '../model'
import type { Requirement } from '../requirement/model'
import { alwaysBefore } from './before'
import { listCycles, prerequisiteGraph } from './cycles'
import { reachable } from './reach'

const index = (overrides: Partial<EditionDocument> = {}) => indexEdition(tinyEdition(overrides), '')

const drill = (key: string, prerequisite: Requirement | null): Skill => ({
  key,
  title: key,
  family: 'safety',
  dive: null,
  approach: null,
  phaseSet: 'drill',
  facets: {},
  summary: key,
  places: [tinyPlace('poolside', 'one', { prerequisite })],
})
const on = (...skills: string[]): Requirement[] =>
  skills.map((skill) => ({ kind: 'signOff', skill, place: 'poolside', atLevel: 'one' }))

/** A small tree of drills in which each letter asks for what it is given. */
const drills = (prerequisites: Readonly<Record<string, Requirement | null>>) =>
  index({
    skills: Object.entries(prerequisites).map(([key, prerequisite]) => drill(key, prerequisite)),
    levels: tinyEdition().levels.slice(0, 1),
    boardMoves: [],
  })
const all = (...of: string[]): Requirement => ({ kind: 'all', of: on(...of) })
const any = (...of: string[]): Requirement => ({ kind: 'any', of: on(...of) })
const atLeast = (n: number, ...of: string[]): Requirement => ({ kind: 'atLeast', n, of: on(...of) })
const letters = (keys: Iterable<string>): string =>
  [...keys]
    .map((key) => key.replace('@poolside', ''))
    .sort()
    .join('')

describe('the graph', () => {
  it('has the implicit board move and the level below among its edges', () => {
    const graph = prerequisiteGraph(index())
    expect(graph.get('103C@3m')).toEqual(['move:forward:3m', '101C@3m'])
    expect(graph.get('level:two')?.[0]).toBe('level:one')
  })

  it('names its circles, and none in a sound edition', () => {
    expect(listCycles(index())).toEqual([])
    const cycle = listCycles(drills({ a: all('c'), b: all('a'), c: all('b'), d: all('a') }))
    expect(cycle.map((walk) => letters(walk.map(({ key }) => key)))).toEqual(['abc'])
    expect(listCycles(drills({ a: any('a') }))).toHaveLength(1)
  })
})

describe('what can be reached', () => {
  it('is everything in a sound edition', () => {
    expect(reachable(index()).size).toBe(index().pairs.size + 3 + 1)
  })

  it('leaves out what waits for itself, and what waits for that', () => {
    expect(letters(reachable(drills({ a: null, b: all('a', 'c'), c: all('b'), d: any('a', 'c'), e: all('c') })))).toBe(
      'ad',
    )
  })

  it('asks for as many branches as are wanted', () => {
    expect(
      letters(
        reachable(drills({ a: null, b: null, x: all('x'), c: atLeast(2, 'a', 'b', 'x'), d: atLeast(2, 'a', 'x') })),
      ),
    ).toBe('abc')
  })
})

describe('what always comes before', () => {
  const before = alwaysBefore(
    drills({
      a: null,
      b: all('a'),
      c: all('a'),
      d: any('b', 'c'),
      e: atLeast(2, 'b', 'c', 'd'),
      f: atLeast(3, 'b', 'c', 'd'),
    }),
  )

  it.each([
    ['b@poolside', 'a'],
    ['d@poolside', 'a'],
    ['e@poolside', 'a'],
    ['f@poolside', 'abcd'],
  ] as const)('%s: %s', (key, expected) => {
    expect(letters(before(key))).toBe(expected)
  })

  it('goes through board moves and levels', () => {
    expect([...alwaysBefore(index())('103C@3m')]).toEqual(
      expect.arrayContaining(['101C@3m', 'line-up@3m', 'jump@3m', '101C@1m', 'tread@poolside']),
    )
    expect([...alwaysBefore(index())('level:three')]).toContain('tread@poolside')
  })
})
