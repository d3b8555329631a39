import { RatingChoice } from '@/app/_components/ui/rating-choice'
import type { RatingRow } from '../state/rating-sheet'
import { AnchorLine } from './anchor-line'
import type { OpenDraft } from './use-draft'

/** One criterion: what is asked in words, the five, and what the chosen one means. */
export function CriterionRow({ row, open }: { row: RatingRow; open: OpenDraft }) {
  const { criterion, expected } = row
  const rating = open.draft.ratings[criterion.key] ?? null
  return (
    <div className="deck-row" data-criterion={criterion.key}>
      <h3>{criterion.title}</h3>
      <p className="deck-statement">{criterion.statement}</p>
      <RatingChoice
        name={`rating ${criterion.key}`}
        legend={criterion.title}
        value={rating}
        expected={expected}
        anchors={criterion.anchors}
        onPick={(picked) =>
          open.act(
            picked === null
              ? { type: 'clear', criterion: criterion.key }
              : { type: 'rate', criterion: criterion.key, rating: picked },
          )
        }
      />
      <AnchorLine row={row} rating={rating} />
    </div>
  )
}
