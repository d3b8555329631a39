import { describe, expect, it } from 'vitest'
import { aCall, anAttempt, anIncident, anObservation, deckDiver, deckNow } from '@/tests/support/deck-items'
import { type DeckAction, type DeckState, deckAfter, emptyDeck, nextNumber, openCall, slotOf } from './deck-state'
import { emptyDraft } from './draft'
import { restored } from './restored'

const slot = slotOf(deckDiver, '101C@1m')
const hour = 3_600_000
const call = aCall({ count: 3 })
const attempt = anAttempt({ call: { id: call.id, number: 1 } })
const observation = anObservation(attempt.id)
const rate: DeckAction = { type: 'draft', key: slot, action: { type: 'rate', criterion: 'upright', rating: 2 } }
const marked = (...actions: readonly DeckAction[]): { markedAt: number; state: DeckState } => ({
  markedAt: deckNow,
  state: actions.reduce(deckAfter, emptyDeck),
})

describe('the deck after the page went', () => {
  it('goes on as it was marked, with what is unsent', () => {
    const marks = marked({ type: 'call', slot, call }, { type: 'kept', slot, attempt, observation }, rate)
    expect(restored(marks, [call, attempt, observation], deckNow + hour)).toEqual(marks.state)
  })

  it('takes the outbox as the truth when the page was killed before the marks were cleared', () => {
    const state = restored(marked({ type: 'call', slot, call }, rate), [call, attempt, observation], deckNow + 1000)
    expect(state.drafts[slot]?.ratings).toEqual({})
    expect(state.seen).toEqual([{ attempt, observation }])
    expect(nextNumber(state.calls[slot] ?? { call, kept: [] })).toBe(2)
  })

  it('builds calls, kept numbers and what was seen from the outbox alone', () => {
    const state = restored(null, [call, attempt, observation], deckNow)
    expect(openCall(state, slot)).toEqual({ call, kept: [1] })
    expect(state.seen).toEqual([{ attempt, observation }])
  })

  it('puts a correction that waits in the place of what it corrects', () => {
    const correction = anObservation(attempt.id, { supersedes: { id: observation.id, reason: 'wrong button' } })
    const state = restored(marked({ type: 'kept', slot, attempt, observation }), [correction], deckNow)
    expect(state.seen.map((entry) => entry.observation.id)).toEqual([correction.id])
  })

  it('keeps a newer call than the one that waits', () => {
    const newer = aCall({ calledAt: deckNow + 60_000 })
    expect(restored(marked({ type: 'call', slot, call: newer }), [call], deckNow).calls[slot]?.call).toEqual(newer)
  })

  it('pauses for an incident as long as the server’s snapshot may not know it, and while it waits', () => {
    const [sent, waiting] = [anIncident(), anIncident()]
    const incidentsAfter = (days: number) =>
      restored(marked({ type: 'incident', item: sent }), [waiting], deckNow + days * 24 * hour).incidents
    expect(incidentsAfter(1)).toEqual([sent, waiting])
    expect(incidentsAfter(7)).toEqual([waiting])
  })

  it('never takes marks of an earlier session for those of the next dive, and forgets nothing unsent', () => {
    const sent = anAttempt()
    const marks = marked(
      { type: 'squad', squad: 'juniors' },
      { type: 'call', slot, call },
      { type: 'kept', slot, attempt: sent, observation: anObservation(sent.id) },
      { type: 'kept', slot, attempt, observation },
      { type: 'watch', slot },
      rate,
    )
    const state = restored(marks, [observation], deckNow + 17 * hour)
    expect(state).toEqual({ ...emptyDeck, squad: 'juniors', seen: [{ attempt, observation }] })
    expect(state.drafts[slot] ?? emptyDraft).toEqual(emptyDraft)
  })
})
