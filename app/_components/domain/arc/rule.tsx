import type { PhaseView } from '@/lib/assessment/arc-subject'
import { Bob, bobKind } from './bob'
import { fallsShortCritically } from './falls-short'
import type { ArcDrawing, ArcSize } from './geometry'

const ticks = [0, 1, 2, 3, 4] as const

interface RuleProps {
  readonly drawing: ArcDrawing
  readonly size: ArcSize
  readonly phases: readonly PhaseView[]
  /** Index of the column whose bob has just been set. */
  readonly falling?: number
}

/** The straight rule: equal columns, five ticks, a notch at what is asked, a bob at what was seen. */
export function Rule({ drawing, size, phases, falling }: RuleProps) {
  const [bottom, , , , top] = drawing.levels
  const tick = size.detailed ? 3 : 0
  const marks = drawing.columns.flatMap((x) =>
    ticks.map((rating) => `M${x - tick} ${drawing.levels[rating]}h${2 * tick}`),
  )
  return (
    <g>
      <path className="rule-base" d={`M0 ${bottom}H${drawing.width}`} />
      {size.detailed ? <path className="rule-tick" d={marks.join('')} /> : null}
      {phases.map((view, index) => {
        const x = drawing.columns[index] ?? 0
        const from = (size.detailed && drawing.scene?.stations[index]?.y) || top - size.step * 0.8
        const kind = bobKind(view, fallsShortCritically(view))
        const at = view.rating === null ? bottom : drawing.levels[view.rating]
        const bar = drawing.columnWidth * 0.32
        return (
          <g key={view.phase}>
            {size.detailed || !kind ? (
              <path className={kind ? 'arc-string' : 'arc-dotted'} d={`M${x} ${from}V${kind ? at : bottom}`} />
            ) : null}
            {view.expected > 0 ? (
              <path
                className="rule-notch"
                d={`M${x - size.notch} ${drawing.levels[view.expected]}h${2 * size.notch}`}
              />
            ) : null}
            {kind ? <Bob kind={kind} x={x} y={at} scale={bobScale(size)} falls={falling === index} /> : null}
            {view.critical ? <path className="rule-critical" d={underline(x, bottom, bar, size)} /> : null}
          </g>
        )
      })}
    </g>
  )
}

const bobScale = (size: ArcSize): number => (size.detailed ? (size.step * 0.9) / 17 : 0.36)

const underline = (x: number, bottom: number, half: number, size: ArcSize): string => {
  const [first, second] = size.detailed ? [4, 7.5] : [2.5, 4.75]
  return `M${x - half} ${bottom + first}h${2 * half}M${x - half} ${bottom + second}h${2 * half}`
}
