import { Dialog } from '@/app/_components/ui/dialog'
import type { RatingRow } from '../state/rating-sheet'

interface UnwatchedDialogProps {
  readonly rows: readonly RatingRow[]
  readonly onClose: () => void
  readonly onNotWatched: () => void
}

/** Critical criteria are never filled in by silence: they are rated, or said to be unwatched. */
export function UnwatchedDialog({ rows, onClose, onNotWatched }: UnwatchedDialogProps) {
  return (
    <Dialog title="Critical, and not rated yet" open={rows.length > 0} onClose={onClose}>
      <ul className="deck-steps">
        {rows.map(({ criterion }) => (
          <li key={criterion.key}>
            <b>{criterion.title}</b>
          </li>
        ))}
      </ul>
      <p>If you did not watch them, the attempt is kept as incomplete and counts neither way.</p>
      <div className="deck-choices">
        <button type="button" className="button button-go" onClick={onClose}>
          Rate them
        </button>
        <button type="button" className="button" onClick={onNotWatched}>
          Not watched · keep as incomplete
        </button>
      </div>
    </Dialog>
  )
}
