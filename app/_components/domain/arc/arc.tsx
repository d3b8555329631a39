import type { ArcSubject } from '@/lib/assessment/arc-subject'
import { sayPath, sayPhases } from './alternative'
import { type ArcSizeName, arcSizes, drawArc } from './geometry'
import { Rule } from './rule'
import { Scene } from './scene'

interface ArcProps extends ArcSubject {
  /** What is drawn, e.g. "103B at 1 m, the last three attempts"; the columns follow it in the text alternative. */
  readonly title: string
  readonly size: ArcSizeName
  /** Another drawing on the page says the same. */
  readonly hidden?: boolean
  readonly className?: string
}

/** One drawing at one size. `line` keeps its 96 px; the others fill the width they are given. */
export function Arc({ title, size: name, hidden, className = '', ...subject }: ArcProps) {
  const size = arcSizes[name]
  const drawing = drawArc(subject, size)
  const fixed = name === 'line' ? { width: drawing.width, height: drawing.height } : {}
  return (
    <svg
      className={`arc arc-${name} ${className}`}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      {...fixed}
      role="img"
      aria-label={`${title}. ${sayPath(subject)}${sayPhases(subject.phases)}`}
      aria-hidden={hidden}
    >
      <Scene drawing={drawing} size={size} />
      <Rule drawing={drawing} size={size} phases={subject.phases} />
    </svg>
  )
}

/** The small drawing of lists and queues. */
export function ArcLine(props: Omit<ArcProps, 'size'>) {
  return <Arc size="line" {...props} />
}
