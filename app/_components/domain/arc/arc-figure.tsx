import type { ArcSubject } from '@/lib/assessment/arc-subject'
import { Arc } from './arc'

interface ArcFigureProps extends ArcSubject {
  readonly title: string
  /** What stands under it: whose attempts, over what time, what the notch means. */
  readonly caption?: string
}

/** The arc at its full width with the phases under their columns; a second drawing takes over where there is little room. */
export function ArcFigure({ title, caption, ...subject }: ArcFigureProps) {
  return (
    <figure className="arc-figure">
      <Arc size="wide" title={title} {...subject} />
      <Arc size="narrow" title={title} hidden {...subject} />
      <ol className="arc-labels" aria-hidden="true">
        {subject.phases.map((view) => (
          <li key={view.phase}>{view.label}</li>
        ))}
      </ol>
      {caption ? <figcaption className="measure mt-2 text-13 text-soft">{caption}</figcaption> : null}
    </figure>
  )
}
