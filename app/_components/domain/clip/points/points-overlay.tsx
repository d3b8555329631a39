import type { FilmSize } from '../use-clip'

/** A point in the film's own pixels. */
export interface DrawnPoint {
  readonly key: string
  readonly x: number
  readonly y: number
  /** Stands beside the point. */
  readonly label?: string
  /** The one that is being placed. */
  readonly chosen?: boolean
}

/** A line in the film's own pixels; a dashed one is a help, such as a plumb line. */
export interface DrawnLine {
  readonly key: string
  readonly from: { readonly x: number; readonly y: number }
  readonly to: { readonly x: number; readonly y: number }
  readonly dashed?: boolean
}

interface PointsOverlayProps {
  readonly size: FilmSize
  readonly points: readonly DrawnPoint[]
  readonly lines?: readonly DrawnLine[]
  /** A second set of points is told apart by its hollow marks, not by colour alone. */
  readonly hollow?: boolean
}

const dot = ({ x, y }: DrawnPoint): string => `M ${x} ${y} h 0`

/**
 * Points and lines over a film, drawn in its pixels: the view box is the picture, and letterboxing is the video's own. Marks
 * keep their size on the screen however large the film is shown.
 */
export function PointsOverlay({ size, points, lines = [], hollow = false }: PointsOverlayProps) {
  const letters = size.height / 32
  return (
    <svg className="points" viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true" data-points={points.length}>
      {lines.map(({ key, from, to, dashed }) => (
        <g key={key}>
          <path className="points-halo" d={`M ${from.x} ${from.y} L ${to.x} ${to.y}`} />
          <path
            className={dashed ? 'points-line points-dashed' : 'points-line'}
            d={`M ${from.x} ${from.y} L ${to.x} ${to.y}`}
          />
        </g>
      ))}
      {points.map((point) => (
        <g key={point.key}>
          <path className="points-rim" d={dot(point)} />
          <path className={point.chosen ? 'points-dot points-chosen' : 'points-dot'} d={dot(point)} />
          {hollow ? <path className="points-hole" d={dot(point)} /> : null}
          {point.label ? (
            <text className="points-label" x={point.x + letters * 0.7} y={point.y + letters * 0.35} fontSize={letters}>
              {point.label}
            </text>
          ) : null}
        </g>
      ))}
    </svg>
  )
}
