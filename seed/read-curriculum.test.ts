import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { facetsOfSkill } from '../lib/curriculum/edition/attach'
import { readEdition } from '../lib/curriculum/edition/publish'
import { lint } from '../lib/curriculum/lint/lint'
import { subjectOf } from '../lib/curriculum/lint/subject'
import { overWater, placeFacts } from '../lib/curriculum/place'
import { listNodes } from '../lib/curriculum/requirement/references'
import { nodeSchemas } from '../lib/curriculum/requirement/schema'
import { readCurriculum, readCurriculumFolder } from './read-curriculum'

const { document, placeOf } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')
const { curriculum, pairs, requirements } = subjectOf(document)
const criticalOf = (key: `${string}@${string}`) =>
  pairs
    .find(({ pair }) => pair.key === key)
    ?.pair.criteria.flatMap(({ criterion }) => (criterion.critical ? [criterion.key] : []))

describe('the forward family of the demo curriculum', () => {
  it('is wide enough to be of use', () => {
    expect(document.skills.length).toBeGreaterThanOrEqual(14)
    expect(pairs.length).toBeGreaterThanOrEqual(22)
    expect(document.criteria.filter(({ appliesTo }) => appliesTo.by === 'facets').length).toBeGreaterThanOrEqual(20)
    expect(document.levels.map((level) => level.title)).toEqual(['Soundings', 'Bearings', 'Plumb'])
    expect(curriculum.boardMove('forward', '3m')).toMatchObject({ from: '1m' })
    const taughtAt = new Set(pairs.map(({ pair }) => pair.at.place))
    for (const place of ['floor', 'dry-board', 'poolside', '1m', '3m'] as const) expect(taughtAt).toContain(place)
  })

  it('has nothing wrong', () => {
    expect(lint(document)).toEqual([])
  })

  it('is the same bytes when its canonical form is read and written again', () => {
    const first = readEdition(document)
    if (!first.ok) throw new Error('refused')
    expect(readEdition(JSON.parse(first.canonical))).toMatchObject({ hash: first.hash, canonical: first.canonical })
  })

  it('uses every kind of requirement but dive lists, which take more than one family', () => {
    const used = new Set(requirements.flatMap(({ requirement }) => listNodes(requirement).map(({ node }) => node.kind)))
    const kinds = Object.keys(nodeSchemas).filter((kind) => kind !== 'diveList')
    expect([...used].filter((kind) => kind !== 'diveList').sort()).toEqual(kinds.sort())
  })

  it('tells a coach what to do about every fault, and shows one for every criterion of a dive', () => {
    expect(document.faults.filter((fault) => fault.corrections.every(({ kind }) => kind === 'conditioning'))).toEqual(
      [],
    )
    const ofDives = pairs.filter(({ pair }) => pair.skill.dive !== null).flatMap(({ pair }) => pair.criteria)
    expect(ofDives.filter(({ criterion }) => criterion.faults.length === 0)).toEqual([])
  })

  it('keeps titles apart on the rating page of every skill', () => {
    for (const { pair } of pairs) {
      const titles = pair.criteria.map(({ criterion }) => criterion.title)
      expect(new Set(titles).size, pair.key).toBe(titles.length)
    }
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
    expect(headFirst.length).toBeGreaterThan(10)
    for (const { pair } of headFirst) expect(criticalOf(pair.key), pair.key).toContain('hands-locked')
  })

  it('looks at the water before every start, and clears the board in everything that jumps from one', () => {
    for (const { pair } of pairs.filter(({ pair }) => overWater(pair.at.place) && pair.skill.phaseSet !== 'drill')) {
      expect(
        criticalOf(pair.key)?.filter((key) => key.startsWith('looks-before')),
        pair.key,
      ).toHaveLength(1)
      if (placeFacts[pair.at.place].board && pair.skill.phaseSet !== 'fall-in')
        expect(criticalOf(pair.key), pair.key).toContain('clear-of-board')
    }
  })

  it('meets 3 m before the move only by turns, jumps and falls, each signed by a head coach', () => {
    const at3m = pairs.filter(({ pair }) => pair.at.place === '3m')
    const before = at3m.filter(({ pair }) => pair.at.beforeMove).map(({ pair }) => pair.holding.skill)
    expect(before).toEqual(['takes-turn', 'jump-standing', 'jump-running', 'fall-in'])
    expect(at3m.filter(({ pair }) => pair.at.signer !== 'head')).toEqual([])
  })
})

describe('places in the files', () => {
  it('are those of the item, of a field in it, and of the nearest written thing above what was left out', () => {
    expect(placeOf('/skills/0')).toBe('seed/curriculum/skills/1-safety.yaml:2')
    expect(placeOf('/skills/0/title')).toBe('seed/curriculum/skills/1-safety.yaml:3')
    expect(placeOf('/skills/0/approach')).toBe('seed/curriculum/skills/1-safety.yaml:2')
    expect(placeOf('/levels/0/key')).toMatch(/^seed\/curriculum\/programme\.yaml:\d+$/)
    expect(placeOf('/skills/999')).toBe('seed/curriculum/programme.yaml:3')
  })
})

describe('what an author may leave out', () => {
  const folders: string[] = []
  afterEach(() => {
    for (const path of folders.splice(0)) rmSync(path, { recursive: true })
  })
  const skill = (yaml: string) => {
    const path = mkdtempSync(join(tmpdir(), 'curriculum-'))
    folders.push(path)
    mkdirSync(join(path, 'skills'))
    writeFileSync(
      join(path, 'programme.yaml'),
      JSON.stringify({ ...document, skills: undefined, criteria: undefined, faults: undefined }),
    )
    writeFileSync(join(path, 'skills', 'one.yaml'), yaml)
    const reading = readCurriculumFolder(path)
    return reading.document?.skills[0] ?? reading.problems
  }
  const place = '  places: [{ place: 1m, level: soundings }]'

  it('of a dive follows from its number', () => {
    expect(skill(`- key: '401B'\n  dive: 401B\n  summary: A dive.\n${place}`)).toMatchObject({
      title: 'Inward dive, pike',
      family: 'inward',
      approach: 'standing',
      phaseSet: 'standing',
      facets: {},
      places: [{ signer: 'head', beforeMove: false, prerequisite: null, standard: {} }],
    })
    expect(skill(`- key: x\n  dive: 5221D\n  summary: A dive.\n${place}`)).toMatchObject({
      phaseSet: 'standing twister',
    })
    expect(skill(`- key: x\n  dive: 104C\n  summary: A dive.\n${place}`)).toMatchObject({
      phaseSet: 'running feet-first',
      places: [{ signer: 'coach' }],
    })
  })

  it('is never guessed of a lead-up', () => {
    const problems = skill(`- key: x\n  summary: A lead-up.\n${place}`)
    expect(problems).toContainEqual({
      place: expect.stringMatching(/one\.yaml:1$/),
      message: '/skills/0/title: a title is text',
    })
    expect(problems).toContainEqual(expect.objectContaining({ message: expect.stringContaining('/skills/0/phaseSet') }))
  })
})

it('a path that does not exist is said to be so', () => {
  expect(readCurriculum('no/such/place').problems).toEqual([
    { place: 'no/such/place:1', message: 'there is no such file or folder' },
  ])
})
