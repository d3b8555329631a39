import { describe, expect, it } from 'vitest'
import { parseDay } from '../time'
import { countWord, listed, midSentence, ordinal, sentence } from './grammar'
import { dayName } from './wording'

describe('grammar', () => {
  it('counts in words up to twelve', () => {
    expect([0, 1, 12, 13].map(countWord)).toEqual(['no', 'one', 'twelve', '13'])
    expect([1, 2, 10, 11, 12, 21, 22, 113].map(ordinal)).toEqual([
      'first',
      'second',
      'tenth',
      '11th',
      '12th',
      '21st',
      '22nd',
      '113th',
    ])
  })

  it('lists with semicolons when items have commas', () => {
    expect(listed([])).toBe('')
    expect(listed(['a'])).toBe('a')
    expect(listed(['a', 'b'])).toBe('a and b')
    expect(listed(['a', 'b', 'c'], 'or')).toBe('a, b or c')
    expect(listed(['a, x', 'b', 'c'])).toBe('a, x; b and c')
  })

  it('keeps capitals that are not only those of a beginning', () => {
    expect(['Forward jump', 'AED', '1½ somersaults'].map(midSentence)).toEqual([
      'forward jump',
      'AED',
      '1½ somersaults',
    ])
    expect(sentence('  two  spaces. ')).toBe('Two spaces.')
  })

  it('names the year of a day only when it is another', () => {
    const today = parseDay('2026-11-20')
    expect(dayName(parseDay('2026-01-01'), { today })).toBe('1 January')
    expect(dayName(parseDay('2025-12-31'), { today })).toBe('31 December 2025')
  })
})
