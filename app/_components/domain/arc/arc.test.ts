import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { PhaseView } from '@/lib/assessment/arc-subject'
import { sayPath, sayPhases } from './alternative'
import { Arc, ArcLine } from './arc'
import { ArcFigure } from './arc-figure'
import { PlumbRule } from './plumb-rule'

const seen = (phase: string, over: Partial<PhaseView> = {}): PhaseView => ({
  phase,
  label: phase,
  criterion: `the ${phase} criterion`,
  rating: 3,
  expected: 3,
  how: 'seen',
  critical: false,
  showsCritical: false,
  ...over,
})

const phases = [
  seen('stance'),
  seen('press', { rating: 2 }),
  seen('take-off', { critical: true, showsCritical: true, rating: 2 }),
  seen('flight', { how: 'imputed' }),
  seen('come-out', { how: 'not watched', rating: null, criterion: null, expected: 2 }),
  seen('entry', { critical: true, rating: 1, expected: 2, criterion: 'an ordinary one' }),
  seen('under water', { expected: 0 }),
]
const dive = {
  variant: 'standing',
  facing: 'in',
  turning: 'forwards',
  enters: 'head-first',
  height: '1m',
  phases,
} as const
const arc = renderToStaticMarkup(createElement(Arc, { title: 'Inward dive at 1 m', size: 'wide', ...dive }))
const count = (markup: string, what: RegExp) => [...markup.matchAll(what)].length

describe('the words of an arc', () => {
  it('names the criterion shown in each column, its rating and what is asked', () => {
    expect(sayPhases([seen('press', { rating: 2 })])).toBe('press: the press criterion, 2, asks 3, falls short.')
  })
  it('says what was not watched, what was only taken as expected, and what is critical', () => {
    expect(sayPhases(phases)).toContain('come-out: not watched, asks 2')
    expect(sayPhases(phases)).toContain('flight: the flight criterion, 3 as expected, not rated')
    expect(sayPhases(phases)).toContain('take-off, critical: the take-off criterion, 2, asks 3, falls short')
  })
  it('asks nothing where the level expects nothing', () => {
    expect(sayPhases([seen('under water', { expected: 0 })])).toBe('under water: the under water criterion, 3.')
  })
})

describe('the path in words', () => {
  const path = { facing: 'out', turning: 'backwards', enters: 'feet-first', height: '3m' } as const
  it('says the start, the facing, the turn, the twist and the entry', () => {
    expect(sayPath({ ...path, variant: 'twister' })).toBe(
      'Running, facing the water, turning backwards with a twist, in feet first. ',
    )
    expect(sayPath({ ...path, variant: 'standing feet-first', facing: 'in', turning: null })).toBe(
      'Standing, facing the board, in feet first. ',
    )
    expect(sayPath({ ...path, variant: 'fall-in', enters: 'head-first', height: 'poolside' })).toMatch(
      /^Falling, .* in head first/,
    )
  })
  it('says nothing where nothing is drawn', () => {
    expect(sayPath({ ...path, variant: 'drill' })).toBe('')
    expect(sayPath({ ...path, variant: 'running', height: 'dry-board' })).toBe('')
  })
})

describe('an arc', () => {
  it('is one image whose text alternative is its title and its columns', () => {
    expect(count(arc, /role="img"/g)).toBe(1)
    expect(arc).toContain(
      'aria-label="Inward dive at 1 m. Standing, facing the board, turning forwards, in head first. stance: the stance criterion, 3, asks 3.',
    )
  })
  it('draws a filled bob for what was seen, an open one for what was imputed, none for what was not watched', () => {
    expect(count(arc, /bob bob-seen/g)).toBe(4)
    expect(count(arc, /bob bob-imputed/g)).toBe(1)
    expect(count(arc, /arc-dotted/g)).toBe(1)
  })
  it('is coral with a bar only where the criterion shown is critical and falls short', () => {
    expect(count(arc, /bob bob-short/g)).toBe(1)
    expect(count(arc, /class="bob-bar"/g)).toBe(1)
  })
  it('carries a double line under the critical phases, and a notch only where something is asked', () => {
    expect(count(arc, /rule-critical/g)).toBe(2)
    expect(count(arc, /rule-notch/g)).toBe(6)
  })
  it('writes no style attribute: its style sheet says all', () => {
    const figure = renderToStaticMarkup(createElement(ArcFigure, { title: 'x', ...dive }))
    expect(arc + figure).not.toContain('style=')
  })
  it('keeps 96 px in a list, without strings and ticks', () => {
    const line = renderToStaticMarkup(createElement(ArcLine, { title: 'x', ...dive }))
    expect(line).toContain('width="96"')
    expect(count(line, /arc-string|rule-tick|arc-station|arc-body/g)).toBe(0)
    expect(count(line, /class="bob /g)).toBe(6)
  })
  it('speaks once where it is drawn twice', () => {
    const figure = renderToStaticMarkup(createElement(ArcFigure, { title: 'x', ...dive }))
    expect(count(figure, /<svg/g)).toBe(2)
    expect(count(figure, /aria-hidden="true"[^>]*viewBox|viewBox[^>]*aria-hidden="true"/g)).toBe(1)
  })
})

describe('a rule alone', () => {
  const rule = renderToStaticMarkup(createElement(PlumbRule, { title: 'Stance on the floor', phases, falling: 1 }))
  it('has its bobs and words, and no path', () => {
    expect(rule).toContain('aria-label="Stance on the floor. stance')
    expect(count(rule, /arc-path|arc-board|arc-water/g)).toBe(0)
  })
  it('lets one bob fall', () => expect(count(rule, /bob-falls/g)).toBe(1))
})
