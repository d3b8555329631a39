import { describe, expect, it } from 'vitest'
import { textWidth, wrapText } from './text-width'

describe('the width of a text', () => {
  // Measured with getComputedTextLength in Chromium: Atkinson Hyperlegible Next, tabular, 100 px; regular, then 640.
  it.each([
    ['5231D', 320, 322],
    ['Forward 1½ somersaults,', 1113, 1172],
    ['swimming', 447, 472],
    ['Fall-in', 275, 294],
  ])('of "%s" is never under what it takes', (text, regular, bold) => {
    expect(textWidth(text, 100)).toBeGreaterThanOrEqual(regular)
    expect(textWidth(text, 100)).toBeLessThanOrEqual(regular * 1.25)
    expect(textWidth(text, 100, true)).toBeGreaterThanOrEqual(bold)
  })
})

describe('wrapping', () => {
  it('breaks at spaces only, and loses nothing', () => {
    const text = 'Forward 1½ somersaults, 1 twist, free'
    const lines = wrapText(text, 13, 108)
    expect(lines.join(' ')).toBe(text)
    for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(108)
  })
  it('leaves a long word alone', () => expect(wrapText('a Hindernisschwimmen b', 13, 40)).toHaveLength(3))
})
