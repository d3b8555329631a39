import { useRef, useState } from 'react'
import { succeeds } from '../queue/deck-queue'
import { draftAfter } from '../state/draft'
import { makeKept, type Unkept, unkept } from '../state/items'
import type { RatingRow, RatingSheet } from '../state/rating-sheet'
import { useDeck } from './deck-context'
import type { OpenDraft } from './use-draft'
import { go } from './use-route'
import type { Subject } from './use-subject'

export interface Keeping {
  /** Critical criteria that keeping waits for; empty when it does not. */
  readonly asks: readonly RatingRow[]
  /** Why nothing was kept, as a sentence. */
  readonly problem: string | null
  readonly keep: (restAsExpected: boolean) => void
  /** Keeps after the coach said that she did not watch what is asked. */
  readonly keepUnwatched: () => void
  readonly rateThem: () => void
}

/** What stands in the way at other places than the critical criteria. */
export function sayUnkept(found: Unkept): string | null {
  if (Object.keys(found.moments).length > 0 || found.note) return 'Not kept yet: mend what is marked here first.'
  return found.nothing ? 'Nothing is rated yet. Rate one criterion, or keep with the rest as expected.' : null
}

/** Keeps the attempt of a subject: its attempt and observation enter the queue before the screen goes on. */
export function useKeep(subject: Subject, sheet: RatingSheet, { draft, act, openPhase }: OpenDraft): Keeping {
  const { queue, dispatch, stamp } = useDeck()
  const [asking, setAsking] = useState<{ rest: boolean } | null>(null)
  const [problem, setProblem] = useState<string | null>(null)

  const busy = useRef(false)
  const take = async (what: typeof draft, rest: boolean): Promise<void> => {
    // A durable queue takes its time: a second tap must not keep the attempt twice.
    if (busy.current) return
    busy.current = true
    const kept = makeKept({ ...subject, diver: subject.diver.id }, what, subject.call, rest, stamp())
    const isKept = await succeeds(queue.add([kept.attempt, kept.observation]))
    busy.current = false
    if (!isKept) return setProblem('Not kept. What you marked is still here.')
    dispatch({ type: 'kept', slot: subject.slot, ...kept })
    const [first] = sheet.phases
    if (first) openPhase(first.phase)
    setProblem(null)
  }
  const attempt = (what: typeof draft, rest: boolean): void => {
    const found = unkept(what, sheet, rest)
    if (!found) void take(what, rest)
    else if (found.toRate.length > 0) setAsking({ rest })
    else {
      setProblem(sayUnkept(found))
      if (!found.nothing) go({ at: 'more', diver: subject.diver.id, pair: subject.pair.key })
    }
  }
  const asks = asking ? (unkept(draft, sheet, asking.rest)?.toRate ?? []) : []
  return {
    asks,
    problem,
    keep: (rest) => attempt(draft, rest),
    keepUnwatched: () => {
      const actions = asks.map(({ criterion }) => ({ type: 'not seen', criterion: criterion.key }) as const)
      for (const action of actions) act(action)
      setAsking(null)
      attempt(actions.reduce(draftAfter, draft), asking?.rest ?? false)
    },
    rateThem: () => {
      setAsking(null)
      const [first] = asks
      if (first) openPhase(first.criterion.phase)
    },
  }
}
