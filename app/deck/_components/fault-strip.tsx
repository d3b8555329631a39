import type { Fault } from '@/lib/curriculum/model'
import type { Draft, DraftAction } from '../state/draft'

interface FaultStripProps {
  readonly faults: readonly Fault[]
  readonly draft: Draft
  readonly act: (action: DraftAction) => void
}

/** The usual faults of a phase, a tap each. */
export function FaultStrip({ faults, draft, act }: FaultStripProps) {
  return (
    <fieldset className="deck-faults">
      <legend className="sr-only">Faults</legend>
      {faults.map((fault) => (
        <button
          key={fault.key}
          type="button"
          className="deck-fault"
          aria-pressed={draft.faults.includes(fault.key)}
          onClick={() => act({ type: 'mark fault', fault: fault.key })}
        >
          {fault.seen}
        </button>
      ))}
    </fieldset>
  )
}
