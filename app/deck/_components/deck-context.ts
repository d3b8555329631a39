import { createContext, type Dispatch, useContext } from 'react'
import type { DeckQueue, QueueState } from '../queue/deck-queue'
import type { DeckAction, DeckState } from '../state/deck-state'
import type { Stamp } from '../state/items'
import type { Roster } from '../state/roster'

/** What every screen of the deck reads and does. */
export interface Deck {
  readonly roster: Roster
  readonly state: DeckState
  readonly dispatch: Dispatch<DeckAction>
  readonly queue: DeckQueue
  readonly waiting: QueueState
  readonly reload: () => void
  /** Why the last reload brought nothing. */
  readonly problem: string | null
  readonly loading: boolean
  /** Time, device and edition of what is recorded now. */
  readonly stamp: () => Stamp
}

export const DeckContext = createContext<Deck | null>(null)

export function useDeck(): Deck {
  const deck = useContext(DeckContext)
  if (!deck) throw new Error('A deck screen stands outside the deck.')
  return deck
}
