import type { ReactNode } from 'react'
import type { PhaseView } from '@/lib/assessment/arc-subject'
import type { ObservationItem } from '@/lib/assessment/deck/contract'
import { writeRoute } from '../state/address'
import { FilmedLine } from './clip-stepper'
import { CriterionRow } from './criterion-row'
import { CriticalDock } from './critical-dock'
import { useDeck } from './deck-context'
import { FaultStrip } from './fault-strip'
import { PhaseRule } from './phase-rule'
import { SayLine } from './say-line'
import type { OpenDraft } from './use-draft'
import { useOnceOnly } from './use-once-only'
import { stepPhase, useRatingKeys } from './use-rating-keys'
import { useSwipe } from './use-swipe'

interface RatingPanelProps {
  readonly open: OpenDraft
  readonly title: string
  readonly marks: readonly PhaseView[]
  /** Kept last, until the next one begins: its bobs drop, and its line can still be said. */
  readonly kept?: ObservationItem
  /** Leads to the note and the video. */
  readonly more: string
  /** Of a new attempt: marks it as filmed. */
  readonly filmed?: ReactNode
  readonly notice?: ReactNode
  /** Stands beside the line to say. */
  readonly beside?: ReactNode
  /** Said where the line to say stands while there is none. */
  readonly status: string
  /** The bar at the bottom. */
  readonly children: ReactNode
}

/** One attempt, phase by phase: the rule, the open phase, the critical criterion next to the thumb, the bar. */
export function RatingPanel({
  open,
  title,
  marks,
  kept,
  more,
  filmed,
  notice,
  beside,
  status,
  children,
}: RatingPanelProps) {
  const { sheet, draft, act, phase } = open
  // A kept attempt ends what the dock remembers.
  const attempt = useDeck().state.seen.length
  const here = sheet.phases.find((entry) => entry.phase === phase)
  useRatingKeys(open)
  const swipe = useSwipe((by) => stepPhase(open, by))
  const onceOnly = useOnceOnly()
  return (
    <main id="main" className="deck-rating" onClickCapture={onceOnly} {...swipe}>
      <PhaseRule open={open} title={title} marks={marks} justKept={kept !== undefined} />
      <div className="deck-phase">
        <div className="deck-phase-head">
          <h2 className="text-18">{marks.find((mark) => mark.phase === phase)?.label}</h2>
          <a className="deck-more" href={more}>
            Note, video
          </a>
          {filmed}
          {kept ? (
            <a className="button" href={writeRoute({ at: 'correct', observation: kept.id })}>
              Correct it
            </a>
          ) : (
            <button
              type="button"
              className="button"
              disabled={draft.before.length === 0}
              onClick={() => act({ type: 'undo' })}
            >
              Undo
            </button>
          )}
        </div>
        {notice}
        {draft.filmed ? <FilmedLine clip={draft.filmed.clip} onStep={(clip) => act({ type: 'clip', clip })} /> : null}
        {here && here.faults.length > 0 ? <FaultStrip faults={here.faults} draft={draft} act={act} /> : null}
        {here?.rows.map((row) => (
          <CriterionRow key={row.criterion.key} row={row} open={open} />
        ))}
        {here?.rows.length === 0 ? (
          <p className="deck-sub py-2">Nothing else to rate here{here.critical.length > 0 ? ' than below' : ''}.</p>
        ) : null}
      </div>
      <SayLine sheet={sheet} seen={kept ?? draft} status={status} beside={beside} />
      {sheet.critical.length > 0 ? <CriticalDock key={attempt} open={open} /> : null}
      <footer className="deck-bar">{children}</footer>
    </main>
  )
}
