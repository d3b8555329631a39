import type { Rating } from '@/lib/curriculum/model'
import type { RatingRow } from '../state/rating-sheet'

/** What is seen at the chosen rating, or at the one that the level asks while none is chosen. Its room is kept. */
export function AnchorLine({ row, rating }: { row: RatingRow; rating: Rating | null }) {
  const { criterion, expected } = row
  if (rating !== null)
    return (
      <p className="deck-anchor">
        <b>{rating}</b> {criterion.anchors[rating]}
      </p>
    )
  return (
    <p className="deck-anchor text-soft">
      {expected > 0 ? `Asks ${expected}: ${criterion.anchors[expected]}` : 'This level asks nothing of it yet.'}
    </p>
  )
}
