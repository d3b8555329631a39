import { useEffect, useMemo, useReducer, useSyncExternalStore } from 'react'
import type { Home } from '../device/home'
import { deckAfter } from '../state/deck-state'
import { touched } from '../state/draft'
import type { Roster } from '../state/roster'
import { type Deck, DeckContext } from './deck-context'
import { deviceId, newId } from './device'
import { Screen } from './screen'
import { useLeaveWarning } from './use-leave-warning'
import { usePaused } from './use-paused'
import { useSendAgain } from './use-send-again'

interface DeckOpenProps {
  readonly roster: Roster
  readonly home: Home
  readonly heardAt: number
  readonly reload: () => void
  readonly problem: string | null
  readonly loading: boolean
  readonly loadNewVersion: (() => void) | null
}

/** One coach's deck: what she has marked so far lives here, and on the device. */
export function DeckOpen({ roster, home, ...contact }: DeckOpenProps) {
  const { recent, calls, edition } = roster.snapshot
  const { queue, keepMarks } = home
  const { heardAt, reload, problem, loading, loadNewVersion } = contact
  const waiting = useSyncExternalStore(queue.subscribe, queue.unsent)
  const [state, dispatch] = useReducer(deckAfter, home.left)
  useEffect(() => dispatch({ type: 'snapshot', recent, calls: calls ?? [] }), [recent, calls])
  useEffect(() => keepMarks(state), [keepMarks, state])
  useSendAgain(queue)
  const begun = Object.values(state.drafts).some(touched)
  useLeaveWarning(waiting.unsent.length > 0 || waiting.refused.length > 0 || begun)
  const paused = usePaused(roster, state, waiting, reload)
  const deck = useMemo<Deck>(
    () => ({
      roster: paused,
      home,
      state,
      dispatch,
      queue,
      waiting,
      heardAt,
      reload,
      problem,
      loading,
      loadNewVersion,
      stamp: () => ({ now: Date.now(), device: deviceId(), edition: edition.hash, newId }),
    }),
    [paused, home, state, queue, waiting, heardAt, reload, problem, loading, loadNewVersion, edition.hash],
  )
  return (
    <DeckContext value={deck}>
      <Screen />
    </DeckContext>
  )
}
