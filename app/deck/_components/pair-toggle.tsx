import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { PairLabel } from './pair-label'

interface PairToggleProps {
  readonly pair: PairKey
  readonly chosen: boolean
  readonly onChoose: (choose: boolean) => void
}

/** A pair that a tap chooses and another takes back. */
export function PairToggle({ pair, chosen, onChoose }: PairToggleProps) {
  return (
    <button type="button" className="deck-squad" aria-pressed={chosen} onClick={() => onChoose(!chosen)}>
      <span>
        <PairLabel pair={pair} />
      </span>
    </button>
  )
}
