import type { AttemptItem, DeckItem } from '@/lib/assessment/deck/contract'
import { type DeckState, deckAfter, emptyDeck, slotOfItem } from './deck-state'

/** A call, and what can still be corrected from memory, is of this session: as long as the server lets a call go on. */
const sessionMs = 16 * 3_600_000
/** An incident pauses here until the snapshot knows it, which it does for a week at least. */
const incidentMs = 6 * 86_400_000

/** What was marked on this device, and when it was last touched; device clock. */
export interface KeptMarks {
  readonly markedAt: number
  readonly state: DeckState
}

/** Marks of an earlier session would be taken for those of the next dive: they go. What has not been sent stays. */
function ofThisSession({ markedAt, state }: KeptMarks, unsent: ReadonlySet<string>, now: number): DeckState {
  const fresh = (at: number) => now - at < sessionMs
  return {
    ...emptyDeck,
    ...(fresh(markedAt) ? state : { squad: state.squad, plans: state.plans }),
    incidents: state.incidents.filter(({ id, happenedAt }) => unsent.has(id) || now - happenedAt < incidentMs),
    calls: Object.fromEntries(Object.entries(state.calls).filter(([, { call }]) => fresh(call.calledAt))),
    seen: state.seen.filter(({ observation: { id, observedAt } }) => unsent.has(id) || fresh(observedAt)),
  }
}

function afterItem(state: DeckState, item: DeckItem, attempts: ReadonlyMap<string, AttemptItem>): DeckState {
  if (item.kind === 'call') {
    const slot = slotOfItem(item)
    const known = state.calls[slot]?.call
    return known && known.calledAt >= item.calledAt ? state : deckAfter(state, { type: 'call', slot, call: item })
  }
  if (item.kind === 'incident')
    return state.incidents.some(({ id }) => id === item.id) ? state : deckAfter(state, { type: 'incident', item })
  if (item.kind !== 'observation' || state.seen.some(({ observation }) => observation.id === item.id)) return state
  if (item.supersedes) return deckAfter(state, { type: 'corrected', key: item.supersedes.id, observation: item })
  const attempt = attempts.get(item.attempt)
  return attempt ? deckAfter(state, { type: 'kept', slot: slotOfItem(attempt), attempt, observation: item }) : state
}

/**
 * The deck as it was when the page went, from what was marked and what is still unsent. The outbox is the truth: an attempt in
 * it was kept, even if the page was killed before its marks were cleared, and must not be asked for again.
 */
export function restored(marks: KeptMarks | null, held: readonly DeckItem[], now: number): DeckState {
  const known = marks ? ofThisSession(marks, new Set(held.map(({ id }) => id)), now) : emptyDeck
  const attempts = new Map<string, AttemptItem>(known.seen.map(({ attempt }) => [attempt.id, attempt]))
  for (const item of held) if (item.kind === 'attempt') attempts.set(item.id, item)
  return held.reduce((state, item) => afterItem(state, item, attempts), known)
}
