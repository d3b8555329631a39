import { v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { itemSchema } from '@/lib/assessment/deck/contract'
import { longestClipNumber } from '@/lib/assessment/deck/limits'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import { anAttempt, anObservation, deckDiver, deckEdition, deckNow } from '@/tests/support/deck-items'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { cameraAfter, countedPast, firstClip, inRange, withRunsOn } from './camera'
import { type DeckAction, deckAfter, emptyDeck, slotOf } from './deck-state'
import { type DraftAction, draftAfter, emptyDraft, touched } from './draft'
import { makeKept, unkept } from './items'
import { ratingSheet } from './rating-sheet'
import { restored } from './restored'

const slot = slotOf(deckDiver, '101C@1m')
const other = slotOf('another diver', '101C@1m')
const filmed = (clip: number): DraftAction => ({ type: 'filmed', filmed: { clip, at: deckNow } })
const draft = (action: DraftAction, key: string = slot): DeckAction => ({ type: 'draft', key, action })
const decked = (...actions: readonly DeckAction[]) => actions.reduce(deckAfter, emptyDeck)
const keptAs = (clip: number): DeckAction => {
  const attempt = anAttempt({ filmed: { clip, at: deckNow } })
  return { type: 'kept', slot, attempt, observation: anObservation(attempt.id) }
}
const next = (...actions: readonly DeckAction[]) => decked(...actions).camera.next

describe('the counter of clips', () => {
  it('counts up by itself, across divers, from the number last marked', () => {
    expect(next()).toBe(1)
    expect(next(draft(filmed(1)))).toBe(2)
    expect(next(draft(filmed(1)), draft(filmed(2), other))).toBe(3)
    expect(next(draft(filmed(1)), keptAs(1), draft(filmed(2)), keptAs(2))).toBe(3)
  })

  it('goes on from a number that was put right, up or down', () => {
    expect(next(draft(filmed(1)), draft({ type: 'clip', clip: 12 }))).toBe(13)
    expect(next(draft(filmed(12)), draft({ type: 'clip', clip: 11 }), keptAs(11))).toBe(12)
  })

  it('gives the number back when the mark is taken back, unless a later clip was counted since', () => {
    expect(next(draft(filmed(5)), draft({ type: 'not filmed' }))).toBe(5)
    expect(next(draft(filmed(5)), draft({ type: 'undo' }))).toBe(5)
    expect(next(draft(filmed(5)), draft(filmed(6), other), draft({ type: 'undo' }))).toBe(7)
  })

  it('stays where the camera films on', () => {
    const camera = withRunsOn(firstClip, true, null)
    expect(next({ type: 'camera', camera }, draft(filmed(1)), keptAs(1), draft(filmed(1)))).toBe(1)
    expect(withRunsOn({ next: 5, runsOn: false }, true, { clip: 4, at: 0 })).toEqual({ next: 4, runsOn: true })
    expect(withRunsOn({ next: 4, runsOn: true }, false, { clip: 4, at: 0 })).toEqual({ next: 5, runsOn: false })
  })

  it('never leaves the numbers that a camera can have', () => {
    expect([inRange(0), inRange(longestClipNumber + 1)]).toEqual([1, longestClipNumber])
    const last = { clip: longestClipNumber, at: 0 }
    expect(cameraAfter(firstClip, null, last).next).toBe(longestClipNumber)
    expect(countedPast({ next: 9, runsOn: false }, 3).next).toBe(9)
  })

  it('is known again from the outbox when the page was killed before its marks were written', () => {
    const attempt = anAttempt({ filmed: { clip: 7, at: deckNow } })
    const held = [attempt, anObservation(attempt.id)]
    expect(restored(null, held, deckNow).camera.next).toBe(8)
    const marks = { markedAt: deckNow, state: decked(draft(filmed(9))) }
    expect(restored(marks, held, deckNow).camera.next).toBe(10)
    expect(restored(marks, [], deckNow + 17 * 3_600_000).camera).toEqual(firstClip)
  })
})

describe('the mark of an attempt', () => {
  const drafted = (...actions: readonly DraftAction[]) => actions.reduce(draftAfter, emptyDraft)

  it('is one mark among others: Undo takes it back, and a second tap changes nothing', () => {
    const once = drafted(filmed(3))
    expect(touched(once)).toBe(true)
    expect(draftAfter(once, filmed(4))).toBe(once)
    expect(draftAfter(once, { type: 'undo' }).filmed).toBeNull()
  })

  it('keeps its number when a later mark is undone', () => {
    const rated: DraftAction = { type: 'rate', criterion: 'upright', rating: 2 }
    const put = drafted(filmed(3), rated, { type: 'clip', clip: 8 })
    expect(draftAfter(put, { type: 'undo' })).toMatchObject({ ratings: {}, filmed: { clip: 8, at: deckNow } })
    expect(drafted(rated, { type: 'clip', clip: 8 }).filmed).toBeNull()
  })

  it('goes out with the attempt, and only where there is one; it is no rating by itself', () => {
    const curriculum = indexEdition(tinyEdition(), deckEdition)
    const pair = curriculum.pairs.get('101C@1m') as Pair
    const subject = { diver: deckDiver, pair, atLevel: 'two' }
    const stamp = { now: deckNow, device: v7(), edition: deckEdition, newId: () => v7() }
    const marked = { ...emptyDraft, ratings: { 'safe-distance': 3, 'hands-locked': 4 } as const }
    const { attempt } = makeKept(subject, { ...marked, filmed: { clip: 3, at: deckNow - 5 } }, null, false, stamp)
    expect(itemSchema.parse(attempt)).toMatchObject({ filmed: { clip: 3, at: deckNow - 5 } })
    expect('filmed' in makeKept(subject, marked, null, false, stamp).attempt).toBe(false)
    const sheet = ratingSheet(curriculum, pair, 'one')
    expect(unkept({ ...emptyDraft, filmed: { clip: 3, at: 0 } }, sheet, false)?.nothing).toBe(true)
  })

  it('is gone from what was seen when the server says that its clip was linked', () => {
    const attempt = anAttempt({ filmed: { clip: 3, at: deckNow } })
    const observation = anObservation(attempt.id)
    const { filmed: _, ...linked } = attempt
    const state = decked(
      { type: 'kept', slot, attempt, observation },
      { type: 'snapshot', recent: [{ attempt: linked, observation }], calls: [] },
    )
    expect(state.seen).toMatchObject([{ attempt: linked }])
    expect(state.seen[0]?.attempt.filmed).toBeUndefined()
  })
})
