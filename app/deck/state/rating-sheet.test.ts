import { describe, expect, it } from 'vitest'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { criticalAtHand, phaseAfter } from './critical'
import { lineToSay } from './line-to-say'
import { phaseMarks } from './phase-marks'
import { firstPhase, ratingSheet, stillToRate } from './rating-sheet'

const curriculum = indexEdition(tinyEdition(), 'ab'.repeat(32))
const pair = curriculum.pairs.get('101C@1m')
if (!pair) throw new Error('The small edition has 101C at 1 m.')
const sheet = ratingSheet(curriculum, pair, 'two')
const keyAt = (...args: Parameters<typeof criticalAtHand>) => criticalAtHand(...args)?.criterion.key
const marked = (ratings: Record<string, 0 | 1 | 2 | 3 | 4>, notSeen: string[] = []) => ({ ratings, notSeen })

describe('a rating sheet', () => {
  it('lays the criteria out by phase with what the level asks', () => {
    expect(sheet.rows.map(({ criterion, expected }) => [criterion.key, expected])).toEqual([
      ['board-pushed', 2],
      ['upright', 3],
      ['safe-distance', 3],
      ['hands-locked', 3],
    ])
    expect(sheet.phases.find(({ phase }) => phase === 'entry')?.faults.map(({ key }) => key)).toEqual(['hands-apart'])
    expect(firstPhase(sheet)).toBe('press')
  })

  it('waits for the critical ones, until they are rated or said to be unwatched', () => {
    expect(stillToRate(sheet, marked({}))).toHaveLength(2)
    expect(stillToRate(sheet, marked({ 'hands-locked': 0 }, ['safe-distance']))).toEqual([])
  })
})

describe('the critical criterion at hand', () => {
  it('is the first that waits, of the open phase before others', () => {
    expect(keyAt(sheet, marked({}), 'press', null)).toBe('safe-distance')
    expect(keyAt(sheet, marked({}), 'entry', null)).toBe('hands-locked')
    expect(keyAt(sheet, marked({ 'safe-distance': 3 }), 'flight', null)).toBe('hands-locked')
  })

  it('can be picked, and stays within reach once all are rated', () => {
    const all = marked({ 'safe-distance': 3, 'hands-locked': 3 })
    expect(keyAt(sheet, marked({}), 'press', 'hands-locked')).toBe('hands-locked')
    expect(keyAt(sheet, all, 'flight', null)).toBe('safe-distance')
    expect(keyAt(sheet, all, 'press', null)).toBe('hands-locked')
  })

  it('takes the open phase along, but not away from where the coach is', () => {
    const [first, second] = sheet.critical
    if (!first || !second) throw new Error('Two critical criteria apply.')
    expect(phaseAfter(sheet, marked({}), first, 'flight')).toBe('entry')
    expect(phaseAfter(sheet, marked({}), first, 'press')).toBe('press')
    expect(phaseAfter(sheet, marked({ 'safe-distance': 2 }), second, 'entry')).toBe('entry')
  })
})

describe('the line to say', () => {
  it('says the cue of a fault before anything else, and keeps nothing that the fault spoilt', () => {
    expect(lineToSay(sheet, { ratings: { 'hands-locked': 3, upright: 1 }, faults: ['hands-apart'] })).toEqual({
      keep: null,
      change: 'Grab and lock.',
    })
  })

  it('without a fault says what the asked rating looks like of what lies furthest below, critical first', () => {
    const said = lineToSay(sheet, { ratings: { 'board-pushed': 4, upright: 0, 'safe-distance': 2 }, faults: [] })
    expect(said).toEqual({ keep: 'board pushed', change: 'Sound: a second look finds no fault.' })
  })

  it('says the cue of the one thing that goes wrong with a criterion, marked or not', () => {
    expect(lineToSay(sheet, { ratings: { 'hands-locked': 1 }, faults: [] }).change).toBe('Grab and lock.')
  })

  it('has nothing to say of nothing', () => {
    expect(lineToSay(sheet, { ratings: {}, faults: [] })).toEqual({ keep: null, change: null })
  })
})

describe('the marks on the rule', () => {
  const at = (ratings: Record<string, 0 | 1 | 2 | 3 | 4>, rest: boolean, phase: string) =>
    phaseMarks(sheet, ratings, rest).find((mark) => mark.phase === phase)

  it('shows what was seen, and open bobs for the rest as expected', () => {
    expect(at({ upright: 1 }, true, 'take-off')).toMatchObject({ rating: 1, expected: 3, how: 'seen' })
    expect(at({ upright: 1 }, true, 'press')).toMatchObject({ rating: 2, how: 'imputed' })
    expect(at({ upright: 1 }, false, 'press')).toMatchObject({ rating: null, how: 'not watched' })
  })

  it('leaves an unrated critical phase unwatched, rest as expected or not', () => {
    expect(at({}, true, 'entry')).toMatchObject({ rating: null, how: 'not watched', critical: true })
  })
})
