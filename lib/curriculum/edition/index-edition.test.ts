import { describe, expect, it } from 'vitest'
import { tinyCriterion, tinyEdition, tinyPlace } from '@/tests/support/tiny-edition'
import type { Criterion, EditionDocument, Skill } from '../model'
import type { Place } from '../place'
import { indexEdition } from './index-edition'

const index = (overrides: Partial<EditionDocument> = {}) => indexEdition(tinyEdition(overrides), 'a'.repeat(64))

const pair = (skill: string, place: Place, overrides: Partial<EditionDocument> = {}) => {
  const found = index(overrides).pairs.get(`${skill}@${place}`)
  if (!found) throw new Error(`no pair ${skill}@${place}`)
  return found
}
const keys = (of: { readonly criteria: readonly { readonly criterion: Criterion }[] }) =>
  of.criteria.map((attached) => attached.criterion.key)

describe('pairs', () => {
  it('are one for each skill and place', () => {
    expect([...index().pairs.keys()]).toEqual([
      'tread@poolside',
      'jump@1m',
      'jump@3m',
      'line-up@3m',
      '101C@1m',
      '101C@3m',
      '103C@3m',
    ])
  })

  it('know the lowest level that teaches them', () => {
    expect(pair('101C', '3m').level).toBe(2)
  })
})

describe('criteria attach by facets', () => {
  it('of a dive, from its number, in phase order', () => {
    expect(keys(pair('101C', '1m'))).toEqual(['board-pushed', 'upright', 'safe-distance', 'hands-locked'])
  })

  it('of a lead-up, from what it states', () => {
    expect(keys(pair('jump', '1m'))).toEqual(['board-pushed', 'upright', 'feet-together'])
    expect(keys(pair('tread', 'poolside'))).toEqual(['clear-water'])
  })

  it('only in phases that the skill has: a fall-in has no press and no take-off', () => {
    expect(keys(pair('line-up', '3m'))).toEqual(['hands-locked'])
  })

  it('with every stated field, and to no lead-up that leaves the facet open', () => {
    const attached = (match: Extract<Criterion['appliesTo'], { by: 'facets' }>['match'], at: [string, Place]) =>
      keys(pair(...at, { criteria: [tinyCriterion('only', { appliesTo: { by: 'facets', match } })] }))
    expect(attached({ positions: ['C'], places: ['3m'] }, ['101C', '3m'])).toEqual(['only'])
    expect(attached({ positions: ['C'], places: ['3m'] }, ['101C', '1m'])).toEqual([])
    expect(attached({ positions: ['C'] }, ['line-up', '3m'])).toEqual([])
    expect(attached({ halfSomersaults: { min: 2 } }, ['103C', '3m'])).toEqual(['only'])
    expect(attached({ halfSomersaults: { min: 2 } }, ['101C', '3m'])).toEqual([])
    expect(attached({ halfSomersaults: { max: 2 } }, ['line-up', '3m'])).toEqual([])
    expect(attached({ approaches: ['running'] }, ['jump', '1m'])).toEqual([])
    expect(attached({ kinds: ['lead-up'], enters: ['feet-first'] }, ['jump', '1m'])).toEqual(['only'])
  })

  it('or by a list of skills, at the listed places', () => {
    const criteria = [
      tinyCriterion('listed', { appliesTo: { by: 'skills', skills: ['jump'], places: ['3m'] } }),
      tinyCriterion('no-such-phase', { phase: 'twist start', appliesTo: { by: 'skills', skills: ['jump'] } }),
    ]
    expect(keys(pair('jump', '3m', { criteria }))).toEqual(['listed'])
    expect(keys(pair('jump', '1m', { criteria }))).toEqual([])
  })
})

describe('expectations', () => {
  it('are laid out by level: nothing before the first step, then the last step reached', () => {
    const criteria = [
      tinyCriterion('later', {
        expects: [
          { level: 'two', rating: 2 },
          { level: 'three', rating: 4 },
        ],
      }),
    ]
    expect(pair('101C', '1m', { criteria }).criteria[0]?.expects).toEqual([0, 2, 4])
  })
})

describe('standards', () => {
  it('take what the place changes, and one point of slack for every six criteria, rounded up', () => {
    expect(pair('tread', 'poolside').standard).toMatchObject({ coaches: 1, days: 1, successes: 2, slack: 1 })
    const seven = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((key) => tinyCriterion(key, {}))
    expect(pair('101C', '1m', { criteria: seven }).standard.slack).toBe(2)
    expect(pair('101C', '1m', { criteria: seven.slice(1) }).standard.slack).toBe(1)
    expect(pair('101C', '1m', { criteria: [] }).standard.slack).toBe(0)
  })

  it('count for slack only what is expected at some level', () => {
    const never = ['a', 'b'].map((key) => tinyCriterion(key, { expects: [{ level: 'one', rating: 0 }] }))
    expect(pair('101C', '1m', { criteria: never }).standard.slack).toBe(0)
  })

  it('keep a slack that is written', () => {
    const { standard } = tinyEdition()
    expect(pair('101C', '1m', { standard: { ...standard, slack: 3 } }).standard.slack).toBe(3)
  })
})

describe('the board move', () => {
  const move = { kind: 'boardMove', family: 'forward', to: '3m' }

  it('comes before a dive at that place, beside what its author wrote', () => {
    expect(pair('103C', '3m').prerequisite).toEqual({
      kind: 'all',
      of: [move, { kind: 'signOff', skill: '101C', place: '3m', atLevel: 'three' }],
    })
  })

  it('does not come before a lead-up, a dive elsewhere, or a dive marked before the move', () => {
    expect(pair('jump', '3m').prerequisite).toMatchObject({ kind: 'signOff' })
    expect(pair('101C', '1m').prerequisite).toMatchObject({ kind: 'signOff' })
    expect(pair('tread', 'poolside').prerequisite).toBeNull()
  })

  const dive = (number: string, family: Skill['family']): Skill => ({
    key: number,
    title: number,
    family,
    dive: number,
    approach: 'standing',
    phaseSet: 'standing twister',
    facets: {},
    summary: 'A dive.',
    places: [tinyPlace('3m', 'three')],
  })

  it('of a twisting dive is that of its direction', () => {
    expect(pair('5122D', '3m', { skills: [dive('5122D', 'twisting')] }).prerequisite).toEqual(move)
    expect(pair('5221D', '3m', { skills: [dive('5221D', 'twisting')] }).prerequisite).toBeNull()
  })
})

describe('lookups', () => {
  it('follow the map of level keys that went, and answer −1 for the rest', () => {
    const curriculum = index({ levelMap: { 'old-two': 'two' } })
    expect(['one', 'three', 'old-two', 'nobody', 'constructor'].map(curriculum.levelIndex)).toEqual([0, 2, 1, -1, -1])
  })

  it('find board moves by family and place', () => {
    expect(index().boardMove('forward', '3m')?.key).toBe('forward-3m')
    expect(index().boardMove('back', '3m')).toBeUndefined()
  })
})
