import { useState } from 'react'
import { RatingChoice } from '@/app/_components/ui/rating-choice'
import type { Rating } from '@/lib/curriculum/model'
import { criticalAtHand, phaseAfter } from '../state/critical'
import { stillToRate } from '../state/rating-sheet'
import { AnchorLine } from './anchor-line'
import type { OpenDraft } from './use-draft'

/** The critical criteria, one at a time and always at the same place: rating one brings up the next. */
export function CriticalDock({ open }: { open: OpenDraft }) {
  const { sheet, draft, act, phase, openPhase } = open
  const [picked, setPicked] = useState<string | null>(null)
  const [last, setLast] = useState<string | null>(null)
  const row = criticalAtHand(sheet, draft, phase, picked)
  if (!row) return null
  const { criterion, expected } = row
  const waiting = stillToRate(sheet, draft)
  const index = sheet.critical.indexOf(row)
  const notSeen = draft.notSeen.includes(criterion.key)
  const dealWith = (rating: Rating | null | 'not seen') => {
    if (rating === 'not seen') act({ type: 'not seen', criterion: criterion.key })
    else if (rating === null) act({ type: 'clear', criterion: criterion.key })
    else act({ type: 'rate', criterion: criterion.key, rating })
    const next = rating === null ? phase : phaseAfter(sheet, draft, row, phase)
    if (next && next !== phase) openPhase(next)
    // Once all are dealt with, the one that was changed stays at hand.
    setPicked(rating === null || waiting.every((other) => other === row) ? criterion.key : null)
    setLast(criterion.key)
  }
  const step = () => {
    const next = sheet.critical[(index + 1) % sheet.critical.length]
    if (!next) return
    setPicked(next.criterion.key)
    openPhase(next.criterion.phase)
  }
  const before = last !== criterion.key && sheet.critical.find((other) => other.criterion.key === last)
  const spoken = before && draft.ratings[before.criterion.key] !== undefined ? before : row
  return (
    <section aria-label="Must be rated" className="deck-dock" data-criterion={criterion.key}>
      <div className="deck-dock-head">
        <h3>{criterion.title}</h3>
        {sheet.critical.length > 1 ? (
          <button type="button" className="deck-step" onClick={step}>
            {index + 1} of {sheet.critical.length}
            <span className="sr-only">, next critical criterion</span>
          </button>
        ) : null}
      </div>
      <p className="deck-statement">{criterion.statement}</p>
      <RatingChoice
        key={criterion.key}
        name={`rating ${criterion.key}`}
        legend={criterion.title}
        value={draft.ratings[criterion.key] ?? null}
        expected={expected}
        anchors={criterion.anchors}
        onPick={dealWith}
      />
      <div className="deck-dock-foot">
        <AnchorLine row={spoken} rating={draft.ratings[spoken.criterion.key] ?? null} named={spoken !== row} />
        <button type="button" className="deck-step" aria-pressed={notSeen} onClick={() => dealWith('not seen')}>
          Not watched
        </button>
      </div>
    </section>
  )
}
