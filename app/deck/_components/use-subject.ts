import type { SnapshotCall, SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { openCall, type Slot, slotOf } from '../state/deck-state'
import { proposedLevel } from '../state/roster'
import { useDeck } from './deck-context'

/** What the coach stands before: a diver at a pair, with the call that is open and the level judged at. */
export interface Subject {
  readonly diver: SnapshotDiver
  readonly pair: Pair
  readonly slot: Slot
  readonly call: SnapshotCall | null
  readonly atLevel: string
  /** Why the pair is closed; null when it is not. */
  readonly closed: string | null
}

/** The subject of a route; null when the diver or the pair is not there any more. */
export function useSubject(diverId: string, key: PairKey): Subject | null {
  const { roster, state } = useDeck()
  const [diver, pair] = [roster.divers.get(diverId), roster.curriculum.pairs.get(key)]
  if (!diver || !pair) return null
  const slot = slotOf(diverId, key)
  const call = openCall(state, slot)
  const standing = diver.pairs.find((entry) => entry.pair === key)
  return {
    diver,
    pair,
    slot,
    call,
    atLevel: call?.call.atLevel ?? state.levels[slot] ?? proposedLevel(roster, diver, pair),
    closed: standing?.state === 'closed' ? (standing.because ?? 'It is closed.') : null,
  }
}
