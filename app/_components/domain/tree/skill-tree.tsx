import { InSight } from '@/app/_components/ui/in-sight'
import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { DrawnNode, FamilyDrawing } from '@/lib/curriculum/tree/draw-family'
import { TreeMark, type TreeState } from './tree-mark'

/** What the drawing says of a node beyond its place. */
export interface TreeStep {
  readonly key: string
  readonly href: string
  /** The whole of it in words: what it is, how it stands, what it rests on. */
  readonly says: string
  readonly state: TreeState
}

interface SkillTreeProps {
  readonly title: string
  readonly drawing: FamilyDrawing
  readonly steps: readonly TreeStep[]
  /** The node whose way is drawn in full ink, and what it opens in teal. */
  readonly chosen: string | null
}

/** The id of a node's link, for links that lead into the drawing. */
export const nodeId = (key: string): string => `tree-${key}`

/** Bands reach to the edge of wide screens. */
const bandWidth = 4000
/** Left edge of the drawing inside its region, under the tips of the boards. */
const inset = 12

/** A family as a pool seen from the side: boards over the water, the deck below, progressions from left to right. */
export function SkillTree({ title, drawing, steps, chosen }: SkillTreeProps) {
  const { width, height, bands } = drawing
  const stepOf = new Map(steps.map((step) => [step.key, step]))
  return (
    <div className="tree">
      <svg className="tree-margin" width="88" height={height} aria-hidden="true">
        {bands.map(({ place, margin, top }) => (
          <text key={place} className="tree-place" y={top + 4}>
            {margin.map((line) => (
              <tspan key={line} x="0" dy="14">
                {line}
              </tspan>
            ))}
          </text>
        ))}
      </svg>
      <ScrollRegion label={`${title}, drawn`}>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing made of links is no fieldset */}
        <svg
          className="tree-drawing"
          viewBox={`0 0 ${width + 2 * inset} ${height}`}
          width={width + 2 * inset}
          height={height}
          preserveAspectRatio="xMinYMin"
          role="group"
          aria-label={title}
        >
          <Pool drawing={drawing} />
          <g transform={`translate(${inset} 0)`}>
            {drawing.nodes.map((drawn) => {
              const step = stepOf.get(drawn.node.key)
              return step ? <Node key={step.key} drawn={drawn} step={step} drawing={drawing} chosen={chosen} /> : null
            })}
          </g>
        </svg>
      </ScrollRegion>
      {chosen ? <InSight id={nodeId(chosen)} /> : null}
    </div>
  )
}

function Pool({ drawing: { bands, water } }: { drawing: FamilyDrawing }) {
  return (
    <g>
      {bands.map(({ place, board, top, bottom, label }) => (
        <g key={place}>
          {board ? null : <rect className="tree-deck" y={top} width={bandWidth} height={bottom - top} />}
          <path className={board ? 'tree-board' : 'tree-edge-of-deck'} d={`M0 ${top + 2}H${board ? 72 : bandWidth}`} />
          <text className="tree-place tree-place-printed" x={inset} y={top + 17}>
            {label}
          </text>
        </g>
      ))}
      {water ? (
        <>
          <rect className="tree-water" y={water.top} width={bandWidth} height={water.bottom - water.top} />
          <path className="tree-water-line" d={`M0 ${water.top}H${bandWidth}`} />
        </>
      ) : null}
    </g>
  )
}

interface NodeProps {
  readonly drawn: DrawnNode
  readonly step: TreeStep
  readonly drawing: FamilyDrawing
  readonly chosen: string | null
}

/** A node with the edges that lead to it, so that pointing at it or reaching it by keyboard brings them out. */
function Node({ drawn: { node, x, y, label }, step, drawing, chosen }: NodeProps) {
  const isChosen = step.key === chosen
  const edge = (from: string): string => {
    if (isChosen) return 'tree-edge is-chosen'
    return from === chosen && step.state !== 'closed' ? 'tree-edge is-next' : 'tree-edge'
  }
  return (
    <g className={`tree-step tree-${node.kind} tree-step-${step.state.replace(' ', '-')}`}>
      <g>
        {drawing.links
          .filter(({ to }) => to === step.key)
          .map(({ from, path }) => (
            <path key={from} className={edge(from)} d={path} />
          ))}
      </g>
      <a id={nodeId(step.key)} href={step.href} aria-label={step.says} aria-current={isChosen ? 'true' : undefined}>
        <title>{step.says}</title>
        <rect className="tree-touch" x={x} y={y - label.above} width={label.width} height={label.above + label.below} />
        <g transform={`translate(${x} ${y})`}>
          <TreeMark state={step.state} />
          {label.lines.map((line) => (
            <text
              key={line.down}
              className={`tree-text-${line.size}${line.bold ? ' is-bold' : ''}`}
              x={label.left}
              y={line.down}
            >
              {`${line.text} `}
            </text>
          ))}
        </g>
      </a>
    </g>
  )
}
