import type { ReactNode } from 'react'
import type { Rating } from '@/lib/curriculum/model'
import { lineToSay } from '../state/line-to-say'
import type { RatingSheet } from '../state/rating-sheet'

interface SayLineProps {
  readonly sheet: RatingSheet
  /** What was marked, or kept last. */
  readonly seen: { readonly ratings: Readonly<Record<string, Rating>>; readonly faults: readonly string[] }
  readonly status: string
  readonly beside?: ReactNode
}

/** What the coach can say to the diver now. Its room is there before it has words. */
export function SayLine({ sheet, seen, status, beside }: SayLineProps) {
  const { keep, change } = lineToSay(sheet, seen)
  return (
    <section aria-label="Line to say" className="deck-say">
      <div>
        <p role="status" className={status ? 'deck-say-keep' : 'sr-only'}>
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
      </div>
      {beside}
    </section>
  )
}
