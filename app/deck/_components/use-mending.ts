import { useEffect, useState } from 'react'
import type { ObservationItem } from '@/lib/assessment/deck/contract'
import type { Route } from '../state/address'
import { draftOf } from '../state/draft'
import { unkept } from '../state/items'
import type { RatingRow } from '../state/rating-sheet'
import { useDeck } from './deck-context'
import { type OpenDraft, useDraft } from './use-draft'
import { sayUnkept } from './use-keep'
import type { Observed } from './use-observed'
import { go } from './use-route'

export interface Mending {
  readonly open: OpenDraft
  /** Whether what is not rated was as expected. */
  readonly rest: boolean
  readonly setRest: (rest: boolean) => void
  /** Why it cannot go on, as a sentence. */
  readonly problem: string | null
  /** Critical criteria that it waits for; empty when it does not. */
  readonly asks: readonly RatingRow[]
  /** Goes on, or shows what stands in the way where it can be put right. */
  readonly tryIt: () => void
  /** Goes on after the coach said that she did not watch what is asked. */
  readonly notWatched: () => void
  readonly rateThem: () => void
}

interface MendingOf {
  readonly observation: ObservationItem
  readonly observed: Pick<Observed, 'sheet' | 'applies'>
  /** Where the note and the moments are typed. */
  readonly more: Route
  /** What follows when nothing stands in the way. */
  readonly goOn: (draft: OpenDraft['draft'], rest: boolean) => void
}

/** An observation opened again as a draft under its id, to be corrected or mended. */
export function useMending({ observation, observed: { sheet, applies }, more, goOn }: MendingOf): Mending {
  const { dispatch } = useDeck()
  const open = useDraft(observation.id, sheet)
  const [rest, setRest] = useState(observation.restAsExpected)
  const [problem, setProblem] = useState<string | null>(null)
  const [asking, setAsking] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: opened once, then the draft is the coach's
  useEffect(
    () => dispatch({ type: 'open', key: observation.id, draft: draftOf(observation, applies) }),
    [observation.id],
  )
  const found = unkept(open.draft, sheet, rest)
  const said = found ? sayUnkept(found) : null
  const toRate = found?.toRate ?? []
  return {
    open,
    rest,
    setRest,
    problem,
    asks: asking ? toRate : [],
    tryIt: () => {
      setProblem(said)
      if (toRate.length > 0) setAsking(true)
      else if (said && !found?.nothing) go(more)
      else if (!said) goOn(open.draft, rest)
    },
    notWatched: () => {
      for (const { criterion } of toRate) open.act({ type: 'not seen', criterion: criterion.key })
      setAsking(false)
      setProblem(said)
      // What was not watched carries no rating, so this draft says the same as the one that is marked so.
      if (!said) goOn(open.draft, rest)
    },
    rateThem: () => setAsking(false),
  }
}
