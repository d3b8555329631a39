import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { difficultyTenths, validAt } from '../../lib/curriculum/dives/difficulty'
import { facetsOf } from '../../lib/curriculum/dives/facets'
import { spokenName } from '../../lib/curriculum/dives/name'
import { parseDive, writeDive } from '../../lib/curriculum/dives/parse'
import { diveNumbers } from './dive-numbers'

const seed = 20_150_701

function diveOf(text: string) {
  const result = parseDive(text)
  if (!result.ok) throw new Error(`${text}: ${result.error.message}`)
  return result.dive
}

function refusalOf(text: string) {
  const result = parseDive(text)
  if (result.ok) throw new Error(`${text} was read as ${result.dive.canonical}`)
  return result.error
}

// World Aquatics Competition Regulations, Part Four, DV 2; FINA Diving Rules 2017–21 D 1.5; examples as on usadiving.org.
describe('dive numbers that the rules give as examples', () => {
  it.each([
    ['G-1', '301B', 'reverse', 1, 0, false, 'Reverse dive, pike'],
    ['G-2', '5337D', 'reverse', 3, 7, false, 'Reverse 1½ somersaults, 3½ twists, free'],
    ['G-3', '113B', 'forward', 3, 0, true, 'Flying forward 1½ somersaults, pike'],
    ['G-4', '5211A', 'back', 1, 1, false, 'Back dive, ½ twist, straight'],
    ['G-5', '5253B', 'back', 5, 3, false, 'Back 2½ somersaults, 1½ twists, pike'],
    ['G-6', '203C', 'back', 3, 0, false, 'Back 1½ somersaults, tuck'],
  ] as const)('%s %s', (_id, number, direction, halfSomersaults, halfTwists, flying, name) => {
    const dive = diveOf(number)
    expect(dive).toMatchObject({ canonical: number, direction, halfSomersaults, halfTwists, flying })
    expect(dive.family).toBe(halfTwists > 0 ? 'twisting' : direction)
    expect(spokenName(dive)).toBe(name)
  })

  it('G-7 626C is armstand, and not a dive from a springboard', () => {
    const dive = diveOf('626C')
    expect(dive).toMatchObject({ family: 'armstand', direction: 'back', halfSomersaults: 6, position: 'C' })
    for (const height of [1, 3] as const)
      expect(validAt(dive, height)).toMatchObject({ error: { code: 'platform only' } })
  })

  // D 1.5.4; the example from memory.
  it('reads four digits of groups 1–4 as more than 4½ somersaults: 1011 is forward 5½', () => {
    expect(diveOf('1011C')).toMatchObject({ family: 'forward', halfSomersaults: 11, halfTwists: 0 })
  })

  // Official results 2015–21 hold 6243D.
  it('reads an armstand dive with twists', () => {
    expect(diveOf('6243D')).toMatchObject({ family: 'armstand', direction: 'back', halfSomersaults: 4, halfTwists: 3 })
  })
})

describe('numbers that the rules refuse', () => {
  // Dashes of the springboard table, USA Diving Appendix C (2006) and plongeon.net: grammar, but not possible at a height.
  it.each([
    ['G-8', '107A'],
    ['G-9', '405A'],
  ])('%s %s cannot be done on a springboard', (_id, number) => {
    const dive = diveOf(number)
    for (const height of [1, 3] as const) {
      expect(validAt(dive, height)).toMatchObject({ ok: false, error: { code: 'not possible', text: number } })
      expect(difficultyTenths(dive, height).ok).toBe(false)
    }
  })

  // G-10: D is for twisting dives only. G-11 to G-13: note to the twist table. G-14: FINA D 1.5.3.
  it.each([
    ['G-10', '101D', 'free without twist'],
    ['G-11', '5132B', 'twist position'],
    ['G-12', '5152D', 'twist position'],
    ['G-13', '5111D', 'twist position'],
    ['G-14', '121B', 'flying digit'],
  ] as const)('%s %s', (_id, number, code) => {
    expect(refusalOf(number)).toMatchObject({ code, text: number })
  })

  // From memory: flying dives in B or C only, and none with half a somersault.
  it.each(['113A', '111B', '413A', '411C'])('refuses the flying dive %s', (number) => {
    expect(refusalOf(number).code).toBe('flying')
  })
})

describe('laws of the grammar', () => {
  it('writing what was read gives the number back', () => {
    fc.assert(
      fc.property(diveNumbers, (number) => {
        const dive = diveOf(number)
        expect(dive.canonical).toBe(number)
        expect(writeDive(dive)).toBe(number)
        expect(parseDive(writeDive(dive))).toEqual({ ok: true, dive })
      }),
      { seed, numRuns: 2000 },
    )
  })

  it('case and spaces do not matter', () => {
    const spaced = diveNumbers.chain((number) =>
      fc
        .tuple(...[...number, ''].map(() => fc.constantFrom('', ' ', '\t', '\u00a0')))
        .map((gaps) => ({ number, text: gaps.map((gap, at) => gap + (number[at]?.toLowerCase() ?? '')).join('') })),
    )
    fc.assert(
      fc.property(spaced, ({ number, text }) => {
        expect(diveOf(text)).toEqual(diveOf(number))
      }),
      { seed, numRuns: 1000 },
    )
  })

  it('answers every text with a dive or with a sentence, and never throws', () => {
    const nearly = fc.stringMatching(/^[0-9]{0,6}[A-Fa-f ]{0,2}$/)
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), nearly), (text) => {
        const result = parseDive(text)
        if (result.ok) expect(result.dive.canonical).toBe(text.replace(/\s/g, '').toUpperCase())
        else {
          expect(result.error.text).toBe(text)
          expect(result.error.message).toMatch(/^[a-z].{15,}[^.]$/)
        }
      }),
      { seed, numRuns: 5000 },
    )
  })

  it('gives each dive a name of its own', () => {
    fc.assert(
      fc.property(diveNumbers, diveNumbers, (one, other) => {
        fc.pre(one !== other)
        expect(spokenName(diveOf(one))).not.toBe(spokenName(diveOf(other)))
      }),
      { seed, numRuns: 2000 },
    )
  })

  it('enters on the other side with half a twist more', () => {
    fc.assert(
      fc.property(diveNumbers.map(diveOf), (dive) => {
        const twisted = { ...dive, halfTwists: dive.halfTwists + 1 }
        expect(facetsOf(twisted).entrySide).not.toBe(facetsOf(dive).entrySide)
      }),
      { seed },
    )
  })
})
