import type { PhaseView } from '@/lib/assessment/arc-subject'

/** Filled: seen. Open: as expected, not rated. Barred: a critical shortfall. */
export type BobKind = 'seen' | 'imputed' | 'short'

/** A plumb bob whose point is at (0, 0) and whose string comes from above; 12 wide, 17 high. */
const shape = 'M-2.2-17h4.4v2.4l3.8 3.4c.5 3.4-2.6 7.2-6 11.2c-3.4-4-6.5-7.8-6-11.2l3.8-3.4z'

interface BobProps {
  readonly kind: BobKind
  readonly x: number
  /** Height of the rating: the point touches it. */
  readonly y: number
  readonly scale?: number
  /** Falls to its place once; for the moment after a rating was kept. */
  readonly falls?: boolean
}

export function Bob({ kind, x, y, scale = 1, falls = false }: BobProps) {
  const across = `M-9-5.2L9-11.8`
  return (
    <g transform={`translate(${x} ${y}) scale(${scale})`}>
      <g className={falls ? 'bob-falls' : undefined}>
        <path className={`bob bob-${kind}`} d={shape} />
        {kind === 'short' ? (
          <>
            <path className="bob-bar-gap" d={across} />
            <path className="bob-bar" d={across} />
          </>
        ) : null}
      </g>
    </g>
  )
}

/** A bob alone in a line of text: what was called, or a legend. `none` is one still to come. */
export function BobMark({ kind }: { kind: BobKind | 'none' }) {
  return (
    <svg className="bob-mark" viewBox="-10 -18 20 19" width="20" height="19" aria-hidden="true">
      {kind === 'none' ? <path className="arc-dotted" d="M0-17V0" /> : <Bob kind={kind} x={0} y={0} />}
    </svg>
  )
}

export function bobKind(view: PhaseView, short: boolean): BobKind | null {
  if (view.how === 'not watched' || view.rating === null) return null
  if (view.how === 'imputed') return 'imputed'
  return short ? 'short' : 'seen'
}
