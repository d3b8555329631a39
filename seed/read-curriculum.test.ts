import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { readCurriculum, readCurriculumFolder } from './read-curriculum'

const { document, placeOf } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')

describe('places in the files', () => {
  it('are those of the item, of a field in it, and of the nearest written thing above what was left out', () => {
    expect(placeOf('/skills/0')).toBe('seed/curriculum/skills/1-safety.yaml:2')
    expect(placeOf('/skills/0/title')).toBe('seed/curriculum/skills/1-safety.yaml:3')
    expect(placeOf('/skills/0/approach')).toBe('seed/curriculum/skills/1-safety.yaml:2')
    expect(placeOf('/levels/0/key')).toBe('seed/curriculum/levels/1-to-3m.yaml:2')
    expect(placeOf('/layOff/0/place')).toMatch(/^seed\/curriculum\/programme\.yaml:\d+$/)
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

it('a list that stands in a folder and in programme.yaml is refused', () => {
  const path = mkdtempSync(join(tmpdir(), 'curriculum-'))
  mkdirSync(join(path, 'skills'))
  writeFileSync(join(path, 'programme.yaml'), JSON.stringify(document))
  const { problems } = readCurriculumFolder(path)
  rmSync(path, { recursive: true })
  expect(problems).toEqual([
    {
      place: expect.stringMatching(/programme\.yaml:1$/),
      message: expect.stringContaining('stand here and in skills; keep one of the two'),
    },
  ])
})

it('a path that does not exist is said to be so', () => {
  expect(readCurriculum('no/such/place').problems).toEqual([
    { place: 'no/such/place:1', message: 'there is no such file or folder' },
  ])
})
