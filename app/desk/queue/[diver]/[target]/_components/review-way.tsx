interface ReviewWayProps {
  readonly review: { readonly href: string; readonly moments: string; readonly tally: string | null } | null
  readonly questions: readonly { readonly answered: boolean }[]
  /** She comes from the last of the moments. */
  readonly through: boolean
}

/** The way to the moments of the evidence, how far the reader has come with them, and what of her questions stands. */
export function ReviewWay({ review, questions, through }: ReviewWayProps) {
  const open = questions.filter(({ answered }) => !answered).length
  return (
    <>
      {review ? (
        <>
          {' · '}
          <a href={review.href}>Look at the evidence ({review.moments})</a>
        </>
      ) : (
        ' · Nothing of the evidence is on video'
      )}
      {review?.tally || questions.length > 0 ? (
        <p role={through ? 'status' : undefined}>
          {through ? 'You are through. ' : ''}
          {review?.tally}{' '}
          {questions.length > 0 ? (
            <span className="text-ink">
              {questions.length === 1 ? 'A question stands' : `${questions.length} questions stand`},{' '}
              {open === 0 ? 'answered' : open === questions.length ? 'not answered yet' : `${open} not answered yet`}.
            </span>
          ) : null}
        </p>
      ) : null}
    </>
  )
}
