import { describe, expect, it } from 'vitest'
import { readCurriculum } from '@/seed/read-curriculum'
import { indexEdition } from '../edition/index-edition'
import { type Found, searchCurriculum } from './search'
import { answers, editsBetween, queryWords } from './words'

const { document } = readCurriculum('seed/curriculum')
if (!document) throw new Error('the demo curriculum cannot be read')
const curriculum = indexEdition(document, 'seed')
const search = (query: string) => searchCurriculum(curriculum, query)
const keys = (found: readonly Found[], kind: Found['kind']) =>
  found.filter((one) => one.kind === kind).map(({ key }) => key)

describe('what is looked for', () => {
  it.each([
    ['103 b', ['103b']],
    ['Forward 1.5', ['forward', '1½']],
    ['forward 1 1/2 somersaults', ['forward', '1½', 'somersaults']],
    ['the arms at the top', ['arms', 'top']],
    ['of the', ['of', 'the']],
    ['  ', []],
    ['Łukasz é', ['łukasz', 'e']],
  ])('%j', (query, words) => expect(queryWords(query)).toEqual(words))
})

describe('edits', () => {
  // The textbook pair of the edit distance, and a swap of neighbours as one edit (optimal string alignment).
  it.each([
    ['kitten', 'sitting', 3],
    ['hurlde', 'hurdle', 1],
    ['press', 'press', 0],
    ['', 'abc', 3],
  ])('%s → %s: %i', (a, b, edits) => expect(editsBetween(a, b, 5)).toBe(edits))
  it('forgives longer words more, numbers nothing', () => {
    const near = (word: string, other: string) => answers({ word, forgiving: true }, other)
    expect(near('hurdel', 'hurdle')).toBe(1)
    expect(near('sommersalt', 'somersault')).toBe(1)
    expect(near('104b', '103b')).toBe(0)
    expect(near('arm', 'are')).toBe(0)
    expect(answers({ word: 'hurdel', forgiving: false }, 'hurdle')).toBe(0)
  })
})

describe('searching the curriculum', () => {
  it('finds a dive by its number, with its position or without', () => {
    expect(keys(search('103B'), 'skill')).toEqual(['103B'])
    expect(keys(search('103 b'), 'skill')).toEqual(['103B'])
    expect(keys(search('103'), 'skill')).toEqual(expect.arrayContaining(['103B', '103C']))
  })
  it('finds a dive by its words and its place', () => {
    expect(keys(search('forward dive pike'), 'skill')[0]).toBe('101B')
    expect(keys(search('forward dive pike 3 m'), 'skill')[0]).toBe('101B')
  })
  it('finds criteria and faults, and shows the phrase with the words', () => {
    const [first] = search('hands locked').filter(({ kind }) => kind === 'criterion')
    expect(first?.phrase.filter(({ hit }) => hit).map(({ text }) => text.toLowerCase())).toEqual(['hands', 'locked'])
    expect(keys(search('knees bend pike'), 'fault').length).toBeGreaterThan(0)
  })
  it('forgives nothing where a word is found as it is written', () => {
    for (const { phrase } of search('hands'))
      for (const { text } of phrase.filter(({ hit }) => hit)) expect(text.toLowerCase()).toMatch(/^hands/)
  })
  it('forgives a misspelling', () => {
    expect(keys(search('hurdel'), 'skill')).toEqual(keys(search('hurdle'), 'skill'))
    expect(keys(search('sommersault tuck'), 'skill')).toEqual(expect.arrayContaining(['102C', '103C']))
  })
  it('asks for every word', () => expect(search('pike unheardofword')).toEqual([]))
  it('puts a title before a text', () => {
    const [first] = search('approach')
    expect(first?.phrase.map(({ text }) => text).join('')).toMatch(/approach/i)
    expect(keys(search('full approach'), 'skill')[0]).toBe('approach')
  })
  it('loses no letter of the phrase that it shows', () => {
    const texts = new Set([
      ...document.skills.flatMap(({ title, summary }) => [title, summary]),
      ...document.criteria.flatMap(({ title, statement, anchors }) => [title, statement, ...anchors]),
      ...document.faults.flatMap(({ seen, causes, corrections }) => [
        seen,
        ...causes,
        ...corrections.map(({ text }) => text),
      ]),
    ])
    const found = search('hands')
    expect(found.length).toBeGreaterThan(3)
    for (const { phrase } of found) expect(texts.has(phrase.map(({ text }) => text).join(''))).toBe(true)
  })
})
