import { useCallback, useEffect, useRef, useState } from 'react'
import { fetchSnapshot, type SnapshotResult } from '../state/fetch-snapshot'
import { type Roster, readRoster } from '../state/roster'

export interface SnapshotState {
  readonly roster: Roster | null
  /** Why the last try brought nothing; what came before is still shown. */
  readonly problem: Exclude<SnapshotResult, { kind: 'snapshot' }> | null
  readonly loading: boolean
  readonly reload: () => void
}

function indexed(result: SnapshotResult): Roster | SnapshotState['problem'] {
  if (result.kind !== 'snapshot') return result
  try {
    return readRoster(result.snapshot)
  } catch {
    return { kind: 'failed', message: 'The curriculum could not be read. Load this page again.' }
  }
}

/** Loads the snapshot once, and again when asked. */
export function useSnapshot(): SnapshotState {
  const [state, setState] = useState<Omit<SnapshotState, 'reload'>>({ roster: null, problem: null, loading: true })
  const coach = useRef<string | null>(null)
  const load = useCallback(async () => {
    const found = indexed(await fetchSnapshot(coach.current))
    if (found && 'snapshot' in found) {
      coach.current = found.snapshot.coach.id
      setState({ roster: found, problem: null, loading: false })
    } else setState((before) => ({ ...before, problem: found, loading: false }))
  }, [])
  useEffect(() => void load(), [load])
  const reload = useCallback(() => {
    setState((before) => ({ ...before, loading: true }))
    void load()
  }, [load])
  return { ...state, reload }
}
