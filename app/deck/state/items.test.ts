import { v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { itemSchema } from '@/lib/assessment/deck/contract'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import { aCall, anAttempt, anObservation, deckDiver, deckEdition, deckNow } from '@/tests/support/deck-items'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { type Draft, draftOf, emptyDraft } from './draft'
import { makeCall, makeCorrection, makeKept, makeMended, noteLimit, raisedCritical, type Stamp, unkept } from './items'
import { ratingSheet } from './rating-sheet'

const curriculum = indexEdition(tinyEdition(), deckEdition)
const pair = curriculum.pairs.get('101C@1m') as Pair
const sheet = ratingSheet(curriculum, pair, 'one')
const subject = { diver: deckDiver, pair, atLevel: 'two' }
const stamp: Stamp = { now: deckNow, device: v7(), edition: deckEdition, newId: () => v7() }
const rated: Draft = { ...emptyDraft, ratings: { 'safe-distance': 3, 'hands-locked': 4 } }
const moment = { id: v7(), link: 'https://video.example/c#t=12.4,15', start: '', end: '' }

describe('makeKept', () => {
  it('makes items that the contract accepts, child after parent', () => {
    const draft = { ...rated, note: '  steady  ', faults: ['hands-apart'], moments: [moment] }
    const { attempt, observation } = makeKept(subject, draft, null, true, stamp)
    for (const item of [attempt, observation]) expect(itemSchema.safeParse(item).error).toBeUndefined()
    expect(attempt).toMatchObject({ skill: '101C', place: '1m', atLevel: 'two', call: null, setting: 'training' })
    expect(observation).toMatchObject({
      attempt: attempt.id,
      ratings: rated.ratings,
      restAsExpected: true,
      faults: ['hands-apart'],
      note: 'steady',
      moments: [{ id: moment.id, link: 'https://video.example/c', start: 12.4, end: 15 }],
      edition: deckEdition,
      supersedes: null,
    })
  })

  it('takes the next free number of a call, and the level that was called', () => {
    const call = aCall({ atLevel: 'one', count: 3 })
    const { attempt } = makeKept(subject, rated, { call, kept: [1, 3] }, false, stamp)
    expect(attempt).toMatchObject({ call: { id: call.id, number: 2 }, atLevel: 'one' })
  })

  it('leaves out a moment left blank and a blank note', () => {
    const draft = { ...rated, note: ' ', moments: [{ id: v7(), link: '', start: '', end: '' }] }
    expect(makeKept(subject, draft, null, false, stamp).observation).toMatchObject({ note: null, moments: [] })
  })
})

describe('makeCall', () => {
  it('makes a call that the contract accepts', () => {
    const call = makeCall(subject, 3, stamp)
    expect(itemSchema.safeParse(call).error).toBeUndefined()
    expect(call).toMatchObject({ count: 3, calledAt: deckNow, atLevel: 'two' })
  })
})

describe('unkept', () => {
  it('names the time that the server refused, when what a deck of before sent is opened to be mended', () => {
    const late = { id: moment.id, link: 'https://video.example/c', start: 18_150_233, end: null }
    const refused = anObservation(v7(), { ratings: rated.ratings, moments: [late] })
    expect(itemSchema.safeParse(refused).error?.issues).toMatchObject([{ path: ['moments', 0, 'start'] }])
    const applies = { criteria: new Set(Object.keys(rated.ratings)), faults: new Set<string>() }
    const draft = draftOf(refused, applies)
    expect(unkept(draft, sheet, true)?.moments).toEqual({
      [moment.id]: { start: expect.stringContaining('more than 24 hours') },
    })
    const mended = { ...draft, moments: [{ ...late, start: '12.4', end: '' }] }
    expect(unkept(mended, sheet, true)).toBeNull()
  })

  it('is null when nothing stands against keeping', () => {
    expect(unkept(rated, sheet, false)).toBeNull()
    expect(unkept({ ...emptyDraft, notSeen: ['safe-distance', 'hands-locked'] }, sheet, true)).toBeNull()
  })

  it('waits for each critical criterion, even with the rest as expected', () => {
    const found = unkept({ ...emptyDraft, ratings: { 'safe-distance': 3 } }, sheet, true)
    expect(found?.toRate.map(({ criterion }) => criterion.key)).toEqual(['hands-locked'])
  })

  it('asks for something to be said: a rating, a fault, a note or a moment', () => {
    const unseen = { ...emptyDraft, notSeen: ['safe-distance', 'hands-locked'] }
    expect(unkept(unseen, sheet, false)?.nothing).toBe(true)
    expect(unkept({ ...unseen, ratings: { upright: 0 } }, sheet, false)).toBeNull()
    expect(unkept({ ...unseen, faults: ['hands-apart'] }, sheet, false)).toBeNull()
    expect(unkept({ ...unseen, note: 'Stopped on the board.' }, sheet, false)).toBeNull()
    expect(unkept({ ...unseen, moments: [moment] }, sheet, false)).toBeNull()
  })

  it('puts the errors of a moment at its fields, and measures the note', () => {
    const draft = { ...rated, note: 'x'.repeat(noteLimit + 3), moments: [{ ...moment, start: '9', end: '8' }] }
    expect(unkept(draft, sheet, true)).toMatchObject({
      moments: { [moment.id]: { end: expect.stringContaining('ends before it begins') } },
      note: 'The note is 3 characters too long.',
      nothing: false,
    })
  })
})

describe('corrections', () => {
  const attempt = anAttempt()
  const old = anObservation(attempt.id, {
    ratings: { 'safe-distance': 2, 'hands-locked': 3 },
    moments: [{ id: v7(), link: 'https://video.example/c', start: 1, end: 2 }],
  })

  it('supersede with a reason and new ids, and leave the old observation as it was', () => {
    const draft = { ...rated, moments: [{ ...moment, id: old.moments[0]?.id ?? '' }] }
    const before = structuredClone(old)
    const correction = makeCorrection(old, draft, false, ' wrong number ', stamp)
    expect(itemSchema.safeParse(correction).error).toBeUndefined()
    expect(correction).toMatchObject({
      attempt: attempt.id,
      ratings: rated.ratings,
      restAsExpected: false,
      supersedes: { id: old.id, reason: 'wrong number' },
    })
    expect(correction.id).not.toBe(old.id)
    expect(correction.moments[0]?.id).not.toBe(old.moments[0]?.id)
    expect(old).toEqual(before)
  })

  it('tell which critical ratings they raise or take back', () => {
    const keys = (ratings: Draft['ratings']) =>
      raisedCritical(old, { ...emptyDraft, ratings }, sheet).map(({ criterion }) => criterion.key)
    expect(keys({ 'safe-distance': 3, 'hands-locked': 3, upright: 4 })).toEqual(['safe-distance'])
    expect(keys({ 'safe-distance': 1, 'hands-locked': 2 })).toEqual([])
    expect(keys({ 'hands-locked': 3 })).toEqual(['safe-distance'])
  })
})

describe('makeMended', () => {
  it('keeps the id of what was not stored, unless that id is taken', () => {
    const refused = anObservation(anAttempt().id)
    expect(makeMended(refused, rated, false, false, stamp)).toMatchObject({
      id: refused.id,
      attempt: refused.attempt,
      ratings: rated.ratings,
      restAsExpected: false,
    })
    expect(makeMended(refused, rated, false, true, stamp).id).not.toBe(refused.id)
  })
})
