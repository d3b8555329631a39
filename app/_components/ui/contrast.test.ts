import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

/** WCAG 2.2, "relative luminance" and "contrast ratio" (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number]
  return (light + 0.05) / (dark + 0.05)
}

const css = readFileSync(new URL('../../globals.css', import.meta.url), 'utf8')
const tokens = new Map(
  [...css.matchAll(/^ {2}--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);$/gm)].map(
    ([, name = '', light = '', dark = '']) => [name, { light, dark }],
  ),
)

function value(name: string, theme: 'light' | 'dark'): string {
  const token = tokens.get(name)
  if (!token) throw new Error(`globals.css names no token --${name} as light-dark(#rrggbb, #rrggbb)`)
  return token[theme]
}

/** Every pair that the components draw, with the ratio it must reach. */
const pairs: readonly [string, readonly string[], number, string][] = [
  ['ink', ['page', 'sheet', 'water', 'teal-wash', 'coral-wash'], 7, 'text, bobs and the path, on the deck too'],
  ['soft', ['page', 'sheet'], 7, 'quiet text, on the deck too'],
  ['teal', ['page', 'sheet'], 7, 'what can be done, on the deck too'],
  ['coral', ['page', 'sheet'], 7, 'what must not be missed, on the deck too'],
  ['page', ['ink', 'teal'], 7, 'text on a chosen rating and on the button that does it'],
  ['edge', ['page', 'sheet'], 3, 'edges of controls, the rule and the plumb line'],
  ['coral', ['coral-wash'], 4.5, 'a warning on its wash'],
  ['teal', ['teal-wash'], 4.5, 'what was kept, on its wash'],
  ['soft', ['water'], 3, 'hairlines through the water'],
]

describe.each(['light', 'dark'] as const)('contrast in the %s theme', (theme) => {
  const cases = pairs.flatMap(([front, backs, least, use]) => backs.map((back) => ({ front, back, least, use })))
  it.each(cases)('$front on $back reaches $least : 1 ($use)', ({ front, back, least }) => {
    expect(contrast(value(front, theme), value(back, theme))).toBeGreaterThanOrEqual(least)
  })
})

describe('the measure itself', () => {
  it('is 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
    expect(contrast('#07525b', '#07525b')).toBe(1)
  })
  it('refuses three near tones that are too weak for a wet screen', () => {
    for (const weak of ['#0b6a73', '#bf3f27', '#51626b']) expect(contrast(weak, value('page', 'light'))).toBeLessThan(7)
  })
  it('finds every token of the sheet', () => {
    expect([...tokens.keys()]).toEqual(expect.arrayContaining(['page', 'ink', 'teal', 'coral', 'water']))
  })
})
