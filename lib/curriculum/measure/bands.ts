import { type Band, type BandRating, type Bands, bandRatings } from './model'

/** The least and greatest value of a band; without an end it is open there. */
export const endsOf = ({ least = -Infinity, most = Infinity }: Band): readonly [least: number, most: number] => [
  least,
  most,
]

/** Whether a band has a value in common with the values from `low` to `high`. */
export function touches(band: Band, low: number, high: number): boolean {
  const [least, most] = endsOf(band)
  return low <= most && high >= least
}

/** Ratings whose band does not lie inside the band of the rating below: a better value would earn less. */
export const fallingBands = (bands: Bands): BandRating[] =>
  bandRatings.filter((rating) => {
    const below = bandRatings.find((one) => one === rating - 1)
    if (below === undefined) return false
    const [least, most] = endsOf(bands[rating])
    const [lower, upper] = endsOf(bands[below])
    return least < lower || most > upper
  })
