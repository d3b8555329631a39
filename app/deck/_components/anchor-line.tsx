import type { Rating } from '@/lib/curriculum/model'
import type { RatingRow } from '../state/rating-sheet'

interface AnchorLineProps {
  readonly row: RatingRow
  readonly rating: Rating | null
  /** Another criterion stands above: this one is named. */
  readonly named?: boolean
}

/** What is seen at the chosen rating, or at the one that the level asks while none is chosen. Its room is kept. */
export function AnchorLine({ row, rating, named }: AnchorLineProps) {
  const { criterion, expected } = row
  if (rating !== null)
    return (
      <p className="deck-anchor">
        {named ? <span className="text-soft">{criterion.title} · </span> : null}
        <b>{rating}</b> {criterion.anchors[rating]}
      </p>
    )
  return (
    <p className="deck-anchor text-soft">
      {expected > 0 ? `Asks ${expected}: ${criterion.anchors[expected]}` : 'This level asks nothing of it yet.'}
    </p>
  )
}
