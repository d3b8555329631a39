import { describe, expect, it } from 'vitest'
import { facetsOfSkill, phasesOf } from '../lib/curriculum/edition/attach'
import { faultAt } from '../lib/curriculum/edition/fault-at'
import { readEdition } from '../lib/curriculum/edition/publish'
import { lint } from '../lib/curriculum/lint/lint'
import { subjectOf } from '../lib/curriculum/lint/subject'
import { overWater, placeFacts } from '../lib/curriculum/place'
import type { Requirement } from '../lib/curriculum/requirement/model'
import { listNodes } from '../lib/curriculum/requirement/references'
import { nodeSchemas } from '../lib/curriculum/requirement/schema'
import { alwaysBefore } from '../lib/curriculum/tree/before'
import { canMeet, reachable } from '../lib/curriculum/tree/reach'
import type { TreeKey } from '../lib/curriculum/tree/target'
import { levelKey, listTargets } from '../lib/curriculum/tree/target'
import { readCurriculumFolder } from './read-curriculum'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')
const { curriculum, pairs, requirements } = subjectOf(document)
const alwaysEarlier = alwaysBefore(curriculum)

const criticalOf = (key: `${string}@${string}`) =>
  pairs
    .find(({ pair }) => pair.key === key)
    ?.pair.criteria.flatMap(({ criterion }) => (criterion.critical ? [criterion.key] : []))

describe('the demo curriculum', () => {
  it('has nothing wrong', () => {
    expect(lint(document)).toEqual([])
  })

  it('is wide enough to be of use', () => {
    const dives = new Set(document.skills.flatMap(({ dive }) => dive ?? []))
    expect(dives.size).toBeGreaterThanOrEqual(45)
    expect(document.skills.filter(({ dive }) => dive === null).length).toBeGreaterThanOrEqual(30)
    expect(document.criteria.length).toBeGreaterThanOrEqual(70)
    expect(document.levels.map(({ title }) => title)).toEqual([
      'Soundings',
      'Bearings',
      'Plumb',
      'Reach',
      'Traverse',
      'Offing',
      'Landfall',
    ])
    expect(document.boardMoves.map(({ family }) => family)).toEqual(['forward', 'back', 'inward', 'reverse'])
  })

  it.each(['forward', 'back', 'reverse', 'inward', 'twisting'] as const)(
    'takes the %s family from lead-ups on land to 1 m and 3 m',
    (family) => {
      const own = pairs.filter(({ pair }) => pair.skill.family === family)
      const dives = own.filter(({ pair }) => pair.skill.dive !== null)
      expect(new Set(dives.map(({ pair }) => pair.at.place))).toEqual(new Set(['1m', '3m']))
      expect(own.some(({ pair }) => !overWater(pair.at.place))).toBe(true)
      expect(own.some(({ pair }) => placeFacts[pair.at.place].belt)).toBe(true)
    },
  )

  it('teaches something at every place of a club', () => {
    const taughtAt = new Set(pairs.map(({ pair }) => pair.at.place))
    const dry = ['floor', 'trampoline', 'trampoline-belt', 'dry-board', 'dry-board-belt'] as const
    for (const place of [...dry, 'poolside', '1m', '3m'] as const) expect(taughtAt).toContain(place)
  })

  it('is the same bytes when its canonical form is read and written again', () => {
    const first = readEdition(document)
    if (!first.ok) throw new Error('refused')
    expect(readEdition(JSON.parse(first.canonical))).toMatchObject({ hash: first.hash, canonical: first.canonical })
  })

  it('uses every kind of requirement', () => {
    const used = new Set(requirements.flatMap(({ requirement }) => listNodes(requirement).map(({ node }) => node.kind)))
    expect([...used].sort()).toEqual(Object.keys(nodeSchemas).sort())
  })
})

describe('the pathway', () => {
  it('can be walked to its end by somebody who can do everything', () => {
    expect(reachable(curriculum).size).toBe(listTargets(curriculum).length)
  })

  it.each(document.levels.map(({ key }, index) => [key, index] as const))(
    'asks nothing at %s that is first taught above it',
    (key, index) => {
      const below = document.levels.slice(0, index).map((level) => levelKey(level.key))
      const taught = pairs.filter(({ pair }) => pair.level <= index).map(({ pair }) => pair.key)
      const open = listTargets(curriculum).filter(
        (target) => target.key.startsWith('move:') || [...below, ...taught].includes(target.key as never),
      )
      const keys = new Set<TreeKey>()
      const met = () =>
        open.filter(
          ({ key, requirement }) => !keys.has(key) && (!requirement || canMeet(requirement, { curriculum, keys })),
        )
      for (let next = met(); next.length > 0; next = met()) for (const target of next) keys.add(target.key)
      const level = listTargets(curriculum).find((target) => target.key === levelKey(key))
      expect(level?.requirement && canMeet(level.requirement, { curriculum, keys })).toBe(true)
    },
  )

  it('lets nobody move up to 3 m forwards who has not stood backwards on a board', () => {
    expect([...alwaysEarlier('move:forward:3m')]).toContain('back-jump@1m')
  })

  it('falls before it dives at every height, on the side of the entry', () => {
    // Common practice, no published source: an entry is learned from a fall before it is dived.
    const dives = pairs.filter(
      ({ pair }) => pair.skill.dive !== null && facetsOfSkill(pair.skill).enters === 'head-first',
    )
    const fall = { forward: 'fall-in', inward: 'fall-in', back: 'back-fall-in', reverse: 'back-fall-in' } as const
    for (const { pair } of dives) {
      const { direction, halfTwists } = facetsOfSkill(pair.skill)
      if (direction && halfTwists === 0)
        expect([...alwaysEarlier(pair.key)], pair.key).toContain(`${fall[direction]}@${pair.at.place}`)
    }
  })

  it('waits with dives from 3 m for the year of the tenth birthday', () => {
    const early = pairs.filter(({ pair }) => pair.skill.dive !== null && pair.at.beforeMove)
    expect(early.map(({ pair }) => pair.key)).toEqual([])
    const waits = (node: Requirement | undefined): boolean => {
      if (node?.kind === 'all') return node.of.some(waits)
      if (node?.kind === 'any') return node.of.every(waits)
      if (node?.kind === 'level') return waits(document.levels.find(({ key }) => key === node.level)?.requirement)
      if (node?.kind === 'boardMove') return waits(curriculum.boardMove(node.family, node.to)?.requirement)
      return node?.kind === 'age' && (node.min ?? 0) >= 10 && node.on === 'year-end'
    }
    for (const { family, requirement } of document.boardMoves) expect(waits(requirement), family).toBe(true)
  })

  it.each(['102C@1m', '103C@1m', '103C@3m', '202C@1m', '203C@1m', '203C@3m', '302C@1m', '402C@1m'] as const)(
    'has %s wait, by whichever way, for ropes, for the same dive elsewhere or for a take-off that was watched',
    (key) => {
      const pair = curriculum.pairs.get(key)
      const waits = (node: Requirement): boolean => {
        if (node.kind === 'all') return node.of.some(waits)
        if (node.kind === 'any') return node.of.every(waits)
        if (node.kind === 'criterion') return true
        return node.kind === 'signOff' && (placeFacts[node.place].belt || node.skill === pair?.skill.key)
      }
      expect(pair?.prerequisite && waits(pair.prerequisite)).toBe(true)
    },
  )

  it('wraps the back twisters round a straight somersault', () => {
    expect([...alwaysEarlier('5221D@1m')]).toContain('202A@1m')
  })

  it('leaves reverse, inward, twisting and all of 3 m to a head coach', () => {
    const headed = pairs.filter(
      ({ pair }) => pair.at.place === '3m' || ['reverse', 'inward', 'twisting'].includes(pair.skill.family),
    )
    expect(headed.filter(({ pair }) => pair.at.signer !== 'head').map(({ pair }) => pair.key)).toEqual([])
  })
})

describe('what is watched', () => {
  it('tells a coach what to do about every fault, and shows one for every criterion of a dive', () => {
    expect(document.faults.filter((fault) => fault.corrections.every(({ kind }) => kind === 'conditioning'))).toEqual(
      [],
    )
    const ofDives = pairs.filter(({ pair }) => pair.skill.dive !== null).flatMap(({ pair }) => pair.criteria)
    expect(ofDives.filter(({ criterion }) => criterion.faults.length === 0)).toEqual([])
  })

  it('mends a dive that passes too close by something simpler in the same direction', () => {
    const directionsOf = (key: string) => {
      const skill = document.skills.find((one) => one.key === key)
      // The back press on land is where inward dives begin as well.
      if (skill && skill.facets.direction === undefined)
        return skill.key === 'back-press' ? ['back', 'inward'] : [skill.family]
      return [skill?.facets.direction]
    }
    for (const { pair } of pairs.filter(
      ({ pair }) => pair.skill.phaseSet !== 'drill' && pair.at.place !== 'poolside',
    )) {
      const close = pair.criteria.flatMap(({ criterion }) => criterion.faults).find((key) => /close/.test(key))
      const fault = close === undefined ? undefined : curriculum.faults.get(close)
      if (!fault) continue
      const drills = faultAt(fault, pair).corrections.flatMap(({ drill }) => drill?.skill ?? [])
      const { direction } = facetsOfSkill(pair.skill)
      expect(drills, `${pair.key}: ${close}`).toHaveLength(1)
      expect(drills.flatMap(directionsOf), `${pair.key}: ${close}`).toContain(direction)
      expect(drills, `${pair.key}: ${close}`).not.toContain(pair.skill.key)
    }
  })

  it('watches at every reverse take-off that it goes out, and at every running one the legs', () => {
    const takeOff = (key: string) => (pair: (typeof pairs)[number]['pair']) =>
      pair.criteria.some(({ criterion }) => criterion.faults.includes(key))
    const onBoards = pairs.map(({ pair }) => pair).filter(({ at }) => placeFacts[at.place].board)
    const jumped = onBoards.filter(
      ({ skill }) => facetsOfSkill(skill).direction !== undefined && skill.approach !== null,
    )
    const reverse = jumped.filter(({ skill }) => facetsOfSkill(skill).direction === 'reverse')
    expect(reverse.length).toBeGreaterThan(15)
    expect(reverse.filter((pair) => !takeOff('sits-on-heels')(pair)).map(({ key }) => key)).toEqual([])
    const running = jumped.filter(({ skill }) => ['running', 'running feet-first', 'twister'].includes(skill.phaseSet))
    expect(running.filter((pair) => !takeOff('soft-knees')(pair)).map(({ key }) => key)).toEqual([])
  })

  it('asks nobody to steer up out of an entry from a board', () => {
    const asked = pairs.filter(({ pair }) => pair.criteria.some(({ criterion }) => criterion.key === 'steers-up'))
    expect(new Set(asked.map(({ pair }) => pair.at.place))).toEqual(new Set(['poolside']))
  })

  it('lists a fault only under criteria of its own phase', () => {
    const phaseOf = new Map(document.faults.map(({ key, phase }) => [key, phase]))
    const astray = document.criteria.flatMap(({ key, phase, faults }) =>
      faults.filter((fault) => phaseOf.get(fault) !== phase).map((fault) => `${key}: ${fault}`),
    )
    expect(astray).toEqual([])
  })

  it('keeps titles apart on the rating page of every skill', () => {
    for (const { pair } of pairs) {
      const titles = pair.criteria.map(({ criterion }) => criterion.title)
      expect(new Set(titles).size, pair.key).toBe(titles.length)
    }
  })

  it('has something to see in every phase of a head-first dive', () => {
    const headFirst = pairs.filter(
      ({ pair }) => pair.skill.dive !== null && facetsOfSkill(pair.skill).enters === 'head-first',
    )
    for (const { pair } of headFirst)
      expect(new Set(pair.criteria.map(({ criterion }) => criterion.phase)), pair.key).toEqual(
        new Set(phasesOf(pair.skill)),
      )
  })
})

// The safety that belongs in every curriculum: common practice, no published source.
describe('level-0 safety', () => {
  it('comes first: deep water, turns, the landing area', () => {
    expect(criticalOf('deep-water@poolside')).toEqual(['treads-calmly', 'swims-out'])
    for (const place of ['poolside', '1m', '3m'])
      expect(criticalOf(`takes-turn@${place}`)).toEqual(['one-at-a-time', 'goes-on-word', 'leaves-landing-area'])
  })

  it('locks the hands in every head-first entry', () => {
    const headFirst = pairs.filter(
      ({ pair }) => overWater(pair.at.place) && facetsOfSkill(pair.skill).enters === 'head-first',
    )
    expect(headFirst.length).toBeGreaterThan(60)
    for (const { pair } of headFirst) expect(criticalOf(pair.key), pair.key).toContain('hands-locked')
  })

  it('has the seat on the edge and the knees held before anybody rolls back', () => {
    expect(criticalOf('seated-back-fall-in@poolside')).toContain('seat-on-the-edge')
  })

  it('looks at the water before every start, and clears the board in everything that jumps from one', () => {
    for (const { pair } of pairs.filter(({ pair }) => overWater(pair.at.place) && pair.skill.phaseSet !== 'drill')) {
      const critical = criticalOf(pair.key) ?? []
      expect(
        critical.filter((key) => key.startsWith('looks-before')),
        pair.key,
      ).toHaveLength(1)
      if (placeFacts[pair.at.place].board && pair.skill.phaseSet !== 'fall-in')
        expect(
          critical.filter((key) => key === 'clear-of-board' || key === 'clear-while-twisting'),
          pair.key,
        ).toHaveLength(1)
    }
  })

  it('has a trained spotter and a belt that was tried wherever there is a belt', () => {
    for (const { pair } of pairs.filter(({ pair }) => placeFacts[pair.at.place].belt))
      expect(criticalOf(pair.key), pair.key).toEqual(['belt-fitted', 'spotter-ready'])
  })

  it('meets 3 m before the move only by turns, jumps and falls', () => {
    const before = pairs.filter(({ pair }) => pair.at.beforeMove)
    expect(before.filter(({ pair }) => pair.at.place !== '3m')).toEqual([])
    expect(before.map(({ pair }) => pair.holding.skill)).toEqual([
      'takes-turn',
      'jump-standing',
      'jump-running',
      'fall-in',
      'back-jump',
      'back-fall-in',
      'reverse-jump',
      'inward-jump',
    ])
  })
})
