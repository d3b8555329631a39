import { useCallback, useEffect, useRef, useState } from 'react'
import { holderIn } from '../device/holder'
import { findSnapshot, keepSnapshot, tidyDevice } from '../device/keeping'
import { fetchSnapshot, type SnapshotResult } from '../state/fetch-snapshot'
import { type Roster, readRoster } from '../state/roster'

type Problem = Exclude<SnapshotResult, { kind: 'snapshot' }>

export interface SnapshotState {
  readonly roster: Roster | null
  /** Device clock of the contact that the roster comes from. */
  readonly heardAt: number
  /** Why the last try brought nothing; what came before is still shown. */
  readonly problem: Problem | null
  readonly loading: boolean
  readonly reload: () => void
}

function indexed(result: SnapshotResult): Roster | Problem {
  if (result.kind !== 'snapshot') return result
  try {
    return readRoster(result.snapshot)
  } catch {
    return { kind: 'failed', message: 'The curriculum could not be read. Load this page again.' }
  }
}

const holder = () => holderIn(document.cookie)
const signedOut: Problem = {
  kind: 'refused',
  message: 'You are signed out here, or somebody else has signed in. What you recorded is kept on this phone for you.',
}

/** What is on the device for whoever is signed in here; first goes what is nobody's any more, or too old. */
async function loadKept(): Promise<Pick<SnapshotState, 'roster' | 'heardAt'> | null> {
  const coach = holder()
  await tidyDevice(coach, Date.now()).catch(() => {})
  const kept = coach === null ? null : await findSnapshot(coach).catch(() => null)
  const roster = kept ? indexed({ kind: 'snapshot', snapshot: kept.snapshot }) : null
  return kept && roster && 'snapshot' in roster ? { roster, heardAt: kept.heardAt } : null
}

/** Milliseconds. */
const askAgainAfter = 5_000

/** Shows what is on the device at once, then what the server says; again when asked, when the network is back, and while nothing was heard. */
export function useSnapshot(): SnapshotState {
  const [state, setState] = useState<Omit<SnapshotState, 'reload'>>({
    roster: null,
    heardAt: 0,
    problem: null,
    loading: true,
  })
  const coach = useRef<string | null>(null)
  const load = useCallback(async () => {
    const opening = coach.current === null
    const found = indexed(await fetchSnapshot(coach.current))
    const heardAt = Date.now()
    if ('snapshot' in found) {
      coach.current = found.snapshot.coach.id
      void keepSnapshot(found.snapshot, heardAt).catch(() => {})
      return setState({ roster: found, heardAt, problem: null, loading: false })
    }
    // Whoever is not let in keeps no data here; a session that runs out in the middle of training closes nothing.
    const shut = opening && found.kind === 'refused'
    if (shut) void tidyDevice(null, heardAt).catch(() => {})
    setState((before) => ({ ...before, roster: shut ? null : before.roster, problem: found, loading: false }))
  }, [])
  const reload = useCallback(() => {
    setState((before) => ({ ...before, loading: true }))
    void load()
  }, [load])
  useEffect(() => {
    void loadKept().then((kept) => {
      if (kept) setState((before) => ({ ...before, ...kept }))
      void load()
    })
  }, [load])
  // The network can be back for the phone a moment before it is for the page; a deck that has not opened asks again by itself.
  const waiting = state.roster === null && state.problem?.kind === 'failed' && !state.loading
  useEffect(() => {
    if (!waiting) return
    const timer = setTimeout(reload, askAgainAfter)
    return () => clearTimeout(timer)
  }, [waiting, reload])
  const shown = state.roster?.snapshot.coach.id
  useEffect(() => {
    window.addEventListener('online', reload)
    return () => window.removeEventListener('online', reload)
  }, [reload])
  useEffect(() => {
    if (shown === undefined || holder() !== shown) return
    const look = () => {
      if (holder() === shown) return
      coach.current = null
      setState((before) => ({ ...before, roster: null, problem: signedOut }))
    }
    document.addEventListener('visibilitychange', look)
    return () => document.removeEventListener('visibilitychange', look)
  }, [shown])
  return { ...state, reload }
}
