import { describe, expect, it } from 'vitest'
import { anAttempt, anObservation } from '@/tests/support/deck-items'
import { type DraftAction, draftAfter, draftOf, emptyDraft, touched } from './draft'

const drafted = (...actions: readonly DraftAction[]) => actions.reduce(draftAfter, emptyDraft)
const rate = (criterion: string, rating: 0 | 1 | 2 | 3 | 4): DraftAction => ({ type: 'rate', criterion, rating })
const moment = { id: 'm', link: 'https://video.example/c', start: '1', end: '' }

describe('marks', () => {
  it('rates, and rates again', () => {
    expect(drafted(rate('hands-locked', 2), rate('upright', 0), rate('hands-locked', 3)).ratings).toEqual({
      'hands-locked': 3,
      upright: 0,
    })
  })

  it('takes a second tap on the same rating for the first', () => {
    const once = drafted(rate('upright', 2))
    expect(draftAfter(once, rate('upright', 2))).toBe(once)
  })

  it('clears to "not watched", which is no rating', () => {
    expect(drafted(rate('upright', 0), { type: 'clear', criterion: 'upright' }).ratings).toEqual({})
    expect(draftAfter(emptyDraft, { type: 'clear', criterion: 'upright' })).toBe(emptyDraft)
  })

  it('holds either a rating or "not seen", whichever was said last', () => {
    const unseen = drafted(rate('hands-locked', 3), { type: 'not seen', criterion: 'hands-locked' })
    expect(unseen).toMatchObject({ ratings: {}, notSeen: ['hands-locked'] })
    expect(draftAfter(unseen, rate('hands-locked', 1))).toMatchObject({ ratings: { 'hands-locked': 1 }, notSeen: [] })
    expect(draftAfter(unseen, { type: 'clear', criterion: 'hands-locked' }).notSeen).toEqual([])
    expect(draftAfter(unseen, { type: 'not seen', criterion: 'hands-locked' })).toBe(unseen)
  })

  it('marks a fault with one tap and takes it back with the next, in the order of marking', () => {
    const [late, apart] = [
      { type: 'mark fault', fault: 'late' },
      { type: 'mark fault', fault: 'hands-apart' },
    ] as const
    expect(drafted(late, apart).faults).toEqual(['late', 'hands-apart'])
    expect(drafted(late, apart, late).faults).toEqual(['hands-apart'])
  })
})

describe('undo', () => {
  it('takes back tap by tap, to the empty draft and no further', () => {
    const taps = [rate('upright', 2), rate('upright', 1), { type: 'mark fault', fault: 'late' }] as const
    const undo: DraftAction = { type: 'undo' }
    expect(drafted(...taps, undo)).toMatchObject({ ratings: { upright: 1 }, faults: [] })
    expect(drafted(...taps, undo, undo)).toMatchObject({ ratings: { upright: 2 } })
    expect(drafted(...taps, undo, undo, undo)).toEqual(emptyDraft)
    expect(drafted(...taps, undo, undo, undo, undo)).toEqual(emptyDraft)
  })

  it('never eats what was typed', () => {
    const typed = drafted(
      rate('upright', 2),
      { type: 'say', changes: { note: 'Left foot first', cued: true } },
      { type: 'add moment', moment },
      { type: 'undo' },
    )
    expect(typed).toMatchObject({ ratings: {}, note: 'Left foot first', cued: true, moments: [moment] })
  })

  it('remembers more taps than an attempt has, and not without end', () => {
    const many = drafted(...Array.from({ length: 200 }, (_, at) => rate('upright', at % 2 ? 3 : 2)))
    expect(many.before.length).toBeGreaterThanOrEqual(40)
    expect(many.before.length).toBeLessThan(100)
  })
})

describe('moments', () => {
  it('are added, changed by id and dropped', () => {
    const other = { ...moment, id: 'n' }
    const both = drafted({ type: 'add moment', moment }, { type: 'add moment', moment: other })
    const changed = draftAfter(both, { type: 'change moment', moment: { ...moment, end: '4' } })
    expect(changed.moments).toEqual([{ ...moment, end: '4' }, other])
    expect(draftAfter(changed, { type: 'drop moment', id: 'm' }).moments).toEqual([other])
  })
})

describe('touched', () => {
  it('is true of anything that the coach did, and false of blanks', () => {
    expect(touched(emptyDraft)).toBe(false)
    expect(touched(drafted({ type: 'say', changes: { note: '  ' } }))).toBe(false)
    expect(touched(drafted({ type: 'add moment', moment: { id: 'm', link: '', start: '', end: ' ' } }))).toBe(false)
    expect(touched(drafted(rate('upright', 0)))).toBe(true)
    expect(touched(drafted({ type: 'not seen', criterion: 'upright' }))).toBe(true)
    expect(touched(drafted({ type: 'mark fault', fault: 'late' }))).toBe(true)
    expect(touched(drafted({ type: 'say', changes: { note: 'x' } }))).toBe(true)
    expect(touched(drafted({ type: 'add moment', moment }))).toBe(true)
  })
})

describe('draftOf', () => {
  it('opens an observation as it was written, without what no longer applies', () => {
    const observation = anObservation(anAttempt().id, {
      ratings: { 'hands-locked': 3, 'gone-since': 1 },
      faults: ['hands-apart', 'gone-too'],
      note: 'Better',
      moments: [{ id: 'm', link: 'https://video.example/c', start: 1.5, end: null }],
    })
    expect(draftOf(observation, { criteria: new Set(['hands-locked']), faults: new Set(['hands-apart']) })).toEqual({
      ...emptyDraft,
      ratings: { 'hands-locked': 3 },
      faults: ['hands-apart'],
      note: 'Better',
      moments: [{ id: 'm', link: 'https://video.example/c', start: '1.5', end: '' }],
    })
  })
})
