import { PlumbRule } from '@/app/_components/domain/arc/plumb-rule'
import type { PhaseView } from '@/lib/assessment/arc-subject'
import { stillToRate } from '../state/rating-sheet'
import type { OpenDraft } from './use-draft'

interface PhaseRuleProps {
  readonly open: OpenDraft
  readonly title: string
  readonly marks: readonly PhaseView[]
  readonly justKept: boolean
}

/** The plumb rule; each of its columns is a button that opens its phase. */
export function PhaseRule({ open, title, marks, justKept }: PhaseRuleProps) {
  const { sheet, draft, phase, openPhase } = open
  const asked = new Set(stillToRate(sheet, draft).map(({ criterion }) => criterion.phase))
  return (
    <nav aria-label="Phases" className={justKept ? 'deck-rule deck-rule-kept' : 'deck-rule'}>
      <PlumbRule title={title} phases={marks} />
      <div className="deck-columns">
        {sheet.phases.map((entry, index) => (
          <button
            key={entry.phase}
            type="button"
            className="deck-column"
            aria-current={entry.phase === phase ? 'step' : undefined}
            aria-label={`${marks[index]?.label ?? entry.phase}${asked.has(entry.phase) ? ', must be rated' : ''}`}
            onClick={() => openPhase(entry.phase)}
          >
            <span aria-hidden="true">{marks[index]?.label}</span>
          </button>
        ))}
      </div>
    </nav>
  )
}
