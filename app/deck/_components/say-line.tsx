import type { Draft } from '../state/draft'
import { lineToSay } from '../state/line-to-say'
import type { RatingSheet } from '../state/rating-sheet'

interface SayLineProps {
  readonly sheet: RatingSheet
  readonly draft: Draft
  readonly status: string
}

/** What the coach can say to the diver now. Its room is there before it has words. */
export function SayLine({ sheet, draft, status }: SayLineProps) {
  const { keep, change } = lineToSay(sheet, draft)
  return (
    <section aria-label="Line to say" className="deck-say">
      <p role="status" className={status ? '' : 'sr-only'}>
        {status}
      </p>
      {keep ? (
        <p className="deck-say-keep">
          <span className="text-soft">Keep:</span> {keep}
        </p>
      ) : null}
      {change ? (
        <p>
          <span className="text-soft">Say:</span> <b>{change}</b>
        </p>
      ) : null}
    </section>
  )
}
