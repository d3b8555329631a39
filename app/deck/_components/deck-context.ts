import { createContext, type Dispatch, useContext } from 'react'
import type { Home } from '../device/home'
import type { DeckQueue, QueueState } from '../queue/deck-queue'
import type { DeckAction, DeckState } from '../state/deck-state'
import type { Stamp } from '../state/items'
import type { Roster } from '../state/roster'

/** What every screen of the deck reads and does. */
export interface Deck {
  readonly roster: Roster
  readonly home: Home
  readonly state: DeckState
  readonly dispatch: Dispatch<DeckAction>
  readonly queue: DeckQueue
  readonly waiting: QueueState
  /** Device clock of the last contact: what is shown of divers is as of then. */
  readonly heardAt: number
  readonly reload: () => void
  /** Why the last reload brought nothing. */
  readonly problem: string | null
  readonly loading: boolean
  /** Changes to a newer deck; null while there is none. */
  readonly loadNewVersion: (() => void) | null
  /** Time, device and edition of what is recorded now. */
  readonly stamp: () => Stamp
}

export const DeckContext = createContext<Deck | null>(null)

export function useDeck(): Deck {
  const deck = useContext(DeckContext)
  if (!deck) throw new Error('A deck screen stands outside the deck.')
  return deck
}
