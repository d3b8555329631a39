import type { Curriculum } from '../edition/curriculum'
import type { SkillFamily } from '../model'
import { type Place, placeFacts, places } from '../place'
import { type FamilyGraph, familyGraph, type TreeNode } from './family-graph'
import { layOut } from './layout/layout'
import type { BandSpan, DrawnLink } from './layout/model'
import { wrapText } from './layout/text-width'
import { labelOf, type NodeLabel } from './node-label'

/** A band of the drawing: one place over the whole width. */
export interface PlaceBand extends BandSpan {
  readonly place: Place
  readonly label: string
  /** The label broken into the lines of an 88 px margin. */
  readonly margin: readonly string[]
  /** A springboard or platform: the band hangs from its stroke. */
  readonly board: boolean
}

/** A node where it is drawn. `x` is the left edge of its mark, `y` the height at which edges meet it. */
export interface DrawnNode {
  readonly node: TreeNode
  readonly label: NodeLabel
  readonly x: number
  readonly y: number
}

/** A family's tree as a pool seen from the side, in px. */
export interface FamilyDrawing {
  readonly width: number
  readonly height: number
  readonly bands: readonly PlaceBand[]
  /** The water between the boards and the deck; null where the family has only one of the two. */
  readonly water: BandSpan | null
  /** Ports only where an edge is drawn from them. */
  readonly nodes: readonly DrawnNode[]
  readonly links: readonly DrawnLink[]
  readonly graph: FamilyGraph
}

const room = { top: 22, bottom: 12, between: 6 }
/** A board's stroke and its name take a little more. */
const boardRoom = { ...room, top: 26 }
const waterDepth = 22

/** Places from the highest board down to the water, then from the deck inland. */
const downwards: readonly Place[] = [
  ...places.filter((place) => placeFacts[place].board).reverse(),
  ...places.filter((place) => !placeFacts[place].board).reverse(),
]

/** Lays out the tree of a family. Throws RangeError when its prerequisites run in a circle. */
export function drawFamily(curriculum: Curriculum, family: SkillFamily): FamilyDrawing {
  const graph = familyGraph(curriculum, family)
  const joined = new Set(graph.drawn.map(({ from }) => from))
  const nodes = graph.nodes.filter(({ kind, key }) => kind !== 'port' || joined.has(key))
  const used = downwards.filter((place) => nodes.some((node) => node.place === place))
  const firstDry = used.findIndex((place) => !placeFacts[place].board)
  const spacing = used.map((place, index) => {
    const around = placeFacts[place].board ? boardRoom : room
    return index === firstDry && index > 0 ? { ...around, top: around.top + waterDepth } : around
  })
  const labels = new Map(nodes.map((node) => [node.key, labelOf(node)]))
  const layout = layOut(
    nodes.map(({ key, place }) => {
      const { width, lead, above, below } = labels.get(key) ?? { width: 0, lead: 0, above: 0, below: 0 }
      return { key, band: used.indexOf(place), width, lead, above, below }
    }),
    graph.drawn,
    spacing,
  )
  const spots = new Map(layout.spots.map((spot) => [spot.key, spot]))
  const shore = firstDry > 0 ? layout.bands[firstDry] : undefined
  return {
    width: layout.width,
    height: layout.height,
    bands: used.flatMap((place, index) => {
      const span = layout.bands[index]
      if (!span) return []
      const top = index === firstDry && index > 0 ? span.top + waterDepth : span.top
      const { label, board } = placeFacts[place]
      return [{ place, label, margin: wrapText(label, 13, 72), board, top, bottom: span.bottom }]
    }),
    water: shore ? { top: shore.top, bottom: shore.top + waterDepth } : null,
    nodes: nodes.flatMap((node) => {
      const spot = spots.get(node.key)
      const label = labels.get(node.key)
      return spot && label ? [{ node, label, x: spot.x, y: spot.y }] : []
    }),
    links: layout.links,
    graph,
  }
}
