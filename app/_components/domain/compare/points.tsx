import { guessed } from '../clip/learn-frame'
import { linesOf, pointsOf } from '../clip/points/lines'
import { PointsOverlay } from '../clip/points/points-overlay'
import type { ComparedFilm } from './compared-film'
import type { Size } from './placement'

interface PointsProps {
  readonly film: ComparedFilm
  readonly size: Size | null
  readonly shown: number | null
  readonly hollow: boolean
}

/** The points that were placed on the frame that is shown, if any were. */
export function Points({ film, size, shown, hollow }: PointsProps) {
  if (!size || shown === null) return null
  const near = (film.frame ?? guessed) * 0.75
  const placed = film.placed.filter(({ times }) => times.some((time) => Math.abs(time - shown) < near))
  if (placed.length === 0) return null
  // Without words, which would stand mirrored or over each other; and without what only stood there to measure by.
  const points = placed.flatMap((one, index) =>
    pointsOf(one.points)
      .filter(({ key }) => !/^(board|length|plumb|edge)/.test(key))
      .map(({ key, x, y }) => ({ key: `${index} ${key}`, x, y })),
  )
  const lines = placed.flatMap((one, index) =>
    linesOf(one.kind, one.points).flatMap((line) => (line.dashed ? [] : [{ ...line, key: `${index} ${line.key}` }])),
  )
  return <PointsOverlay size={size} points={points} lines={lines} hollow={hollow} />
}
