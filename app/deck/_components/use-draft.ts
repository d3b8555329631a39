import { useCallback } from 'react'
import type { Phase } from '@/lib/curriculum/model'
import { type Draft, type DraftAction, emptyDraft } from '../state/draft'
import { firstPhase, type RatingSheet } from '../state/rating-sheet'
import { useDeck } from './deck-context'

export interface OpenDraft {
  readonly key: string
  readonly sheet: RatingSheet
  readonly draft: Draft
  readonly act: (action: DraftAction) => void
  readonly phase: Phase | undefined
  readonly openPhase: (phase: Phase) => void
}

/** The draft under a key, with the phase that is open. */
export function useDraft(key: string, sheet: RatingSheet): OpenDraft {
  const { state, dispatch } = useDeck()
  const act = useCallback((action: DraftAction) => dispatch({ type: 'draft', key, action }), [dispatch, key])
  const openPhase = useCallback((phase: Phase) => dispatch({ type: 'phase', key, phase }), [dispatch, key])
  return {
    key,
    sheet,
    draft: state.drafts[key] ?? emptyDraft,
    act,
    phase: state.phases[key] ?? firstPhase(sheet),
    openPhase,
  }
}
