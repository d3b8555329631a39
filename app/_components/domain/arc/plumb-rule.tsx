import type { PhaseView } from '@/lib/assessment/arc-subject'
import { sayPhases } from './alternative'
import { type ArcSizeName, arcSizes, drawRule } from './geometry'
import { Rule } from './rule'

interface PlumbRuleProps {
  readonly title: string
  readonly phases: readonly PhaseView[]
  readonly size?: ArcSizeName
  /** Index of the column whose bob has just been set: it falls to its place. */
  readonly falling?: number
  readonly hidden?: boolean
}

/**
 * The rule without a path. Its columns are exactly equal and fill the width: a grid of as many equal columns laid over
 * it meets them (the deck's buttons that jump between phases).
 */
export function PlumbRule({ title, phases, size: name = 'narrow', falling, hidden }: PlumbRuleProps) {
  const size = arcSizes[name]
  const drawing = drawRule(phases, size)
  return (
    <svg
      className={`arc arc-${name}`}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="img"
      aria-label={`${title}. ${sayPhases(phases)}`}
      aria-hidden={hidden}
    >
      <Rule drawing={drawing} size={size} phases={phases} falling={falling} />
    </svg>
  )
}
