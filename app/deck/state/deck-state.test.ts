import { describe, expect, it } from 'vitest'
import { aCall, anAttempt, anObservation, deckDiver, deckNow } from '@/tests/support/deck-items'
import { callsUnderWay, type DeckAction, deckAfter, emptyDeck, nextNumber, openCall, slotOf } from './deck-state'
import { emptyDraft } from './draft'

const slot = slotOf(deckDiver, '101C@1m')
const decked = (...actions: readonly DeckAction[]) => actions.reduce(deckAfter, emptyDeck)

const call = aCall({ count: 2 })
const declare: DeckAction = { type: 'call', slot, call }
const dived = (number: number) => {
  const attempt = anAttempt({ call: { id: call.id, number } })
  return { attempt, observation: anObservation(attempt.id, { observedAt: deckNow + number }) }
}
const keep = (kept: ReturnType<typeof dived>): DeckAction => ({ type: 'kept', slot, ...kept })
const rate: DeckAction = { type: 'draft', key: slot, action: { type: 'rate', criterion: 'upright', rating: 2 } }

describe('calls', () => {
  it('number their attempts from 1 and close when all are kept', () => {
    const [first, second] = [dived(1), dived(2)]
    const open = decked(declare)
    expect(openCall(open, slot)?.call).toEqual(call)
    const one = deckAfter(open, keep(first))
    expect(nextNumber(one.calls[slot] ?? { call, kept: [] })).toBe(2)
    expect(openCall(deckAfter(one, keep(second)), slot)).toBeNull()
  })

  it('of one diver stay open while another is rated', () => {
    const other = slotOf('another diver', '101C@1m')
    const state = decked(
      declare,
      { type: 'call', slot: other, call: aCall({ diver: 'another diver' }) },
      keep(dived(1)),
    )
    expect(state.calls[slot]?.kept).toEqual([1])
    expect(state.calls[other]?.kept).toEqual([])
  })

  it('are under way until they are rated to their end, the newest first', () => {
    const later = aCall({ diver: 'another diver', calledAt: deckNow + 1, count: 1 })
    const state = decked(declare, { type: 'call', slot: slotOf('another diver', '101C@1m'), call: later })
    const ids = (diver?: string) => callsUnderWay(state, diver).map((open) => open.call.id)
    expect(ids()).toEqual([later.id, call.id])
    expect(ids(deckDiver)).toEqual([call.id])
    expect(callsUnderWay(deckAfter(deckAfter(state, keep(dived(1))), keep(dived(2))), deckDiver)).toEqual([])
  })

  it('end "just watching"; an uncalled attempt takes no number', () => {
    const attempt = anAttempt()
    const watched = decked({ type: 'watch', slot }, keep({ attempt, observation: anObservation(attempt.id) }))
    expect(watched.watching).toEqual([slot])
    expect(watched.calls[slot]).toBeUndefined()
    expect(deckAfter(watched, declare).watching).toEqual([])
    expect(deckAfter(watched, { type: 'choose again', slot }).watching).toEqual([])
  })
})

describe('keeping', () => {
  it('begins the next draft anew, but a test or a meet goes on', () => {
    const say: DeckAction = {
      type: 'draft',
      key: slot,
      action: { type: 'say', changes: { setting: 'meet', cued: true, note: 'x' } },
    }
    expect(decked(declare, rate, say, keep(dived(1))).drafts[slot]).toEqual({ ...emptyDraft, setting: 'meet' })
  })

  it('shows the attempt just kept until the next is begun', () => {
    const kept = dived(1)
    const state = decked(declare, rate, keep(kept))
    expect(state.justKept[slot]).toBe(kept.observation.id)
    expect(deckAfter(state, rate).justKept[slot]).toBeUndefined()
  })

  it('leaves the drafts of other divers alone', () => {
    const other: DeckAction = { ...rate, key: 'other' }
    expect(decked(declare, rate, other, keep(dived(1))).drafts.other?.ratings).toEqual({ upright: 2 })
  })
})

describe('what was seen', () => {
  it('is listed newest first, a corrected one by its correction', () => {
    const [first, second] = [dived(1), dived(2)]
    const correction = anObservation(first.attempt.id, {
      observedAt: deckNow + 3,
      supersedes: { id: first.observation.id, reason: 'wrong number' },
    })
    const state = decked(declare, keep(first), keep(second), {
      type: 'corrected',
      key: first.observation.id,
      observation: correction,
    })
    expect(state.seen.map(({ observation }) => observation.id)).toEqual([correction.id, second.observation.id])
    expect(state.drafts[first.observation.id]).toBeUndefined()
  })

  it('opens a draft once: what was changed in it survives going elsewhere', () => {
    const key = 'observation'
    const state = decked(
      { type: 'open', key, draft: { ...emptyDraft, note: 'as written' } },
      { type: 'draft', key, action: { type: 'say', changes: { note: 'changed' } } },
      { type: 'open', key, draft: { ...emptyDraft, note: 'as written' } },
    )
    expect(state.drafts[key]?.note).toBe('changed')
  })
})

describe('a new snapshot', () => {
  it('adds what the server knows to what this device kept', () => {
    const [first, second] = [dived(1), dived(2)]
    const state = decked(declare, keep(second), { type: 'snapshot', recent: [first], calls: [{ call, kept: [1] }] })
    expect(state.seen).toHaveLength(2)
    expect([...(state.calls[slot]?.kept ?? [])].sort()).toEqual([1, 2])
  })

  it('does not bring back what was corrected here meanwhile', () => {
    const first = dived(1)
    const correction = anObservation(first.attempt.id, { supersedes: { id: first.observation.id, reason: 'slip' } })
    const corrected: DeckAction = { type: 'corrected', key: first.observation.id, observation: correction }
    const state = decked(declare, keep(first), corrected, { type: 'snapshot', recent: [first], calls: [] })
    expect(state.seen.map(({ observation }) => observation.id)).toEqual([correction.id])
  })

  it('goes on with a call after a reload, but not with one older than that of this device', () => {
    const older = aCall({ calledAt: deckNow - 1000 })
    const snapshot: DeckAction = { type: 'snapshot', recent: [], calls: [{ call: older, kept: [1] }] }
    expect(openCall(decked(snapshot), slot)).toEqual({ call: older, kept: [1] })
    expect(openCall(decked(declare, snapshot), slot)?.call).toEqual(call)
  })
})

describe('mending and discarding', () => {
  it('takes a mended observation in place of the refused one', () => {
    const first = dived(1)
    const mended = { ...first.observation, id: 'new id', faults: [] }
    const state = decked(declare, keep(first), { type: 'mended', key: first.observation.id, item: mended })
    expect(state.seen.map(({ observation }) => observation)).toEqual([mended])
  })

  it('turns the observation to an attempt that took a new id', () => {
    const first = dived(1)
    const renewed = { ...first.attempt, id: 'new id' }
    const state = decked(declare, keep(first), { type: 'mended', key: first.attempt.id, item: renewed })
    expect(state.seen).toEqual([{ attempt: renewed, observation: { ...first.observation, attempt: 'new id' } }])
  })

  it('frees the number of a discarded attempt, so that it can be rated again', () => {
    const [first, second] = [dived(1), dived(2)]
    const ids = [first.attempt.id, first.observation.id]
    const state = decked(declare, keep(first), keep(second), { type: 'gone', ids })
    expect(state.seen.map(({ attempt }) => attempt.id)).toEqual([second.attempt.id])
    expect(openCall(state, slot)).toEqual({ call, kept: [2] })
  })

  it('forgets a discarded call with its attempts', () => {
    const first = dived(1)
    const ids = [call.id, first.attempt.id, first.observation.id]
    const state = decked(declare, keep(first), { type: 'gone', ids })
    expect(state.calls[slot]).toBeUndefined()
    expect(state.seen).toEqual([])
  })

  it('keeps the number of an attempt of which only the ratings were discarded', () => {
    const first = dived(1)
    const state = decked(declare, keep(first), { type: 'gone', ids: [first.observation.id] })
    expect(state.calls[slot]?.kept).toEqual([1])
    expect(state.seen).toEqual([])
  })
})

describe('other actions', () => {
  it('change one thing each', () => {
    expect(decked({ type: 'squad', squad: 's' }).squad).toBe('s')
    expect(decked({ type: 'phase', key: slot, phase: 'entry' }).phases[slot]).toBe('entry')
    expect(decked({ type: 'level', slot, level: 'two' }).levels[slot]).toBe('two')
  })

  it('leave the state as it is when there is nothing to change', () => {
    expect(deckAfter(emptyDeck, { type: 'draft', key: slot, action: { type: 'undo' } })).toBe(emptyDeck)
    const unknown: DeckAction = { type: 'corrected', key: 'unknown', observation: anObservation('a') }
    expect(deckAfter(emptyDeck, unknown)).toBe(emptyDeck)
  })
})
