export const ratingFaces = [0, 1, 2, 3, 4] as const
type Rating = (typeof ratingFaces)[number]

interface RatingChoiceProps {
  readonly name: string
  /** What is rated; read out before the five. */
  readonly legend: string
  readonly value: Rating | null
  /** The notch lies under this one; 0 draws none. */
  readonly expected: Rating
  /** The written anchor of each rating, read out with its number. */
  readonly anchors?: readonly string[]
  /** In client code. Choosing the chosen one again takes it back: null. Without it the row is a plain form field. */
  readonly onPick?: (rating: Rating | null) => void
}

/** Five buttons across, one thumb: radio inputs, so that a form and a keyboard can use them too. */
export function RatingChoice({ name, legend, value, expected, anchors, onPick }: RatingChoiceProps) {
  return (
    <fieldset>
      <legend className="sr-only">{legend}</legend>
      <div className="rating-row">
        {ratingFaces.map((rating) => {
          const marked = rating === expected && expected > 0
          const words = [anchors?.[rating], marked && 'expected'].filter(Boolean).join(', ')
          const chosen = rating === value
          return (
            <label key={rating} className={marked ? 'rating-choice rating-expected' : 'rating-choice'}>
              <input
                type="radio"
                name={name}
                value={rating}
                aria-label={words ? `${rating}: ${words}` : String(rating)}
                {...(onPick
                  ? { checked: chosen, onChange: () => onPick(rating), onClick: () => chosen && onPick(null) }
                  : { defaultChecked: chosen })}
              />
              <span aria-hidden="true" className="rating-face">
                {rating}
              </span>
            </label>
          )
        })}
      </div>
    </fieldset>
  )
}
