import { notFound } from 'next/navigation'
import type { TreeStep } from '@/app/_components/domain/tree/skill-tree'
import type { TreeState } from '@/app/_components/domain/tree/tree-mark'
import { pairName, placeName, type Words } from '@/lib/assessment/readiness/wording'
import type { SkillFamily } from '@/lib/curriculum/model'
import { type DrawnNode, drawFamily, type FamilyDrawing } from '@/lib/curriculum/tree/draw-family'
import { familyName, listFamilies, type TreeNode } from '@/lib/curriculum/tree/family-graph'
import { loadEdition, targetHref } from '../../loader'

/** A row of the list that says what the drawing says. */
export interface TreeRow {
  readonly key: string
  readonly href: string
  readonly dive: string | null
  readonly name: string
  readonly state: string | null
  readonly because: string | null
  readonly restsOn: readonly string[]
}

export interface TreeView {
  readonly title: string
  readonly family: SkillFamily
  readonly chosen: string | null
  readonly drawing: FamilyDrawing
  readonly steps: readonly TreeStep[]
  readonly bands: readonly { readonly place: string; readonly label: string; readonly rows: readonly TreeRow[] }[]
  readonly families: readonly { readonly family: SkillFamily; readonly label: string; readonly href: string }[]
}

/** How a node stands, in its mark and in words. */
export interface NodeState {
  readonly mark: TreeState
  readonly word: string | null
  readonly because: string | null
}

interface TreeRequest {
  readonly words: Words
  readonly family: string
  /** The key that the tree is to bring out; one that it lacks chooses nothing. */
  readonly choose: (drawing: FamilyDrawing) => string | undefined
  /** Where trees of this kind live: the family is added to it. */
  readonly base: string
  readonly hrefOf: (node: TreeNode) => string
  readonly stateOf: (node: TreeNode) => NodeState
}

const nameOf = ({ pair, title }: TreeNode, words: Words): string => (pair ? pairName(pair.key, words) : title)

function toRow({ node }: DrawnNode, drawing: FamilyDrawing, request: TreeRequest): TreeRow {
  const { word, because } = request.stateOf(node)
  const nodes = new Map(drawing.graph.nodes.map((one) => [one.key, one]))
  return {
    key: node.key,
    href: request.hrefOf(node),
    dive: node.pair?.skill.dive ?? null,
    name: node.title,
    state: word,
    because,
    restsOn: drawing.graph.edges
      .filter(({ to }) => to === node.key)
      .flatMap(({ from }) => {
        const found = nodes.get(from)
        return found ? [nameOf(found, request.words)] : []
      }),
  }
}

function toStep(drawn: DrawnNode, drawing: FamilyDrawing, request: TreeRequest): TreeStep {
  const { node } = drawn
  const row = toRow(drawn, drawing, request)
  const state = request.stateOf(node)
  const rests = row.restsOn.join('; ')
  // Begins with what is written there, so that it can be spoken to.
  const written = drawn.label.lines.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')
  const where = node.pair ? ` ${placeName(node.place)}` : ''
  const named = [`${written}${where}`, state.word].filter(Boolean).join(', ')
  const says = [named, state.because?.replace(/\.$/, ''), rests && `Rests on: ${rests}`].filter(Boolean).join('. ')
  return { key: node.key, href: row.href, says: `${says}.`, state: state.mark }
}

/** A family's tree with words and links, for whoever may see them; a family that the edition lacks is not found. */
export function viewTree(request: TreeRequest): TreeView {
  const { curriculum } = request.words
  const families = listFamilies(curriculum)
  const family = families.find((name) => name === request.family)
  if (!family) notFound()
  const drawing = drawFamily(curriculum, family)
  const own = drawing.nodes.filter(({ node }) => node.kind !== 'port')
  const chosen = request.choose(drawing)
  return {
    title: familyName(family),
    family,
    chosen: own.find(({ node }) => node.key === chosen)?.node.key ?? null,
    drawing,
    steps: drawing.nodes.map((drawn) => toStep(drawn, drawing, request)),
    bands: drawing.bands
      .map(({ place, label }) => ({
        place,
        label,
        rows: own.filter(({ node }) => node.place === place).map((drawn) => toRow(drawn, drawing, request)),
      }))
      .filter(({ rows }) => rows.length > 0),
    families: families.map((name) => ({ family: name, label: familyName(name), href: `${request.base}/${name}` })),
  }
}

/** A family's tree as it is asked, without a diver. */
export async function loadFamilyTree(family: string, chosen: string | undefined): Promise<TreeView> {
  return viewTree({
    words: await loadEdition(),
    family,
    choose: () => chosen,
    base: '/curriculum/tree',
    hrefOf: ({ key }) => targetHref(key),
    stateOf: (node) => ({ mark: node.kind === 'port' ? 'port' : 'station', word: null, because: null }),
  })
}
