import { useEffect, useMemo, useReducer, useState, useSyncExternalStore } from 'react'
import { memoryQueue } from '../queue/memory-queue'
import { postTo } from '../queue/transport'
import { deckAfter, emptyDeck } from '../state/deck-state'
import { touched } from '../state/draft'
import type { Roster } from '../state/roster'
import { type Deck, DeckContext } from './deck-context'
import { deviceId, newId } from './device'
import { Screen } from './screen'
import { useLeaveWarning } from './use-leave-warning'

interface DeckOpenProps {
  readonly roster: Roster
  readonly reload: () => void
  readonly problem: string | null
  readonly loading: boolean
}

/** One coach's deck: her queue and what she has marked so far live here until the page goes. */
export function DeckOpen({ roster, reload, problem, loading }: DeckOpenProps) {
  const { coach, recent, calls, edition } = roster.snapshot
  const [queue] = useState(() => memoryQueue(postTo('/api/deck/sync', coach.id)))
  const waiting = useSyncExternalStore(queue.subscribe, queue.unsent)
  const [state, dispatch] = useReducer(deckAfter, emptyDeck)
  useEffect(() => dispatch({ type: 'snapshot', recent, calls: calls ?? [] }), [recent, calls])
  useEffect(() => {
    const again = () => void queue.sendNow()
    // Back from another page, where the coach may have signed in.
    const back = () => {
      if (document.visibilityState === 'visible' && queue.unsent().sending !== 'idle') again()
    }
    window.addEventListener('online', again)
    document.addEventListener('visibilitychange', back)
    return () => {
      window.removeEventListener('online', again)
      document.removeEventListener('visibilitychange', back)
    }
  }, [queue])
  const begun = Object.values(state.drafts).some(touched)
  useLeaveWarning(waiting.unsent.length > 0 || waiting.refused.length > 0 || begun)
  const deck = useMemo<Deck>(
    () => ({
      roster,
      state,
      dispatch,
      queue,
      waiting,
      reload,
      problem,
      loading,
      stamp: () => ({ now: Date.now(), device: deviceId(), edition: edition.hash, newId }),
    }),
    [roster, state, queue, waiting, reload, problem, loading, edition.hash],
  )
  return (
    <DeckContext value={deck}>
      <Screen />
    </DeckContext>
  )
}
