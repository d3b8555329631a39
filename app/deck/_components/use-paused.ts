import { useEffect, useMemo, useRef } from 'react'
import type { QueueState } from '../queue/deck-queue'
import type { DeckState } from '../state/deck-state'
import { localIncidents, withIncidents } from '../state/incidents'
import type { Roster } from '../state/roster'
import { clock } from './when'

/** The roster with what this phone's own incidents pause. Asks for a new snapshot when one of them was sent. */
export function usePaused(
  roster: Roster,
  { incidents }: DeckState,
  { unsent, refused }: QueueState,
  reload: () => void,
): Roster {
  const waiting = unsent.filter(({ kind }) => kind === 'incident').length
  const before = useRef(waiting)
  useEffect(() => {
    if (waiting < before.current) reload()
    before.current = waiting
  }, [waiting, reload])
  return useMemo(
    () => withIncidents(roster, localIncidents(roster, incidents, { unsent, refused }), clock),
    [roster, incidents, unsent, refused],
  )
}
