import type { Curriculum, Pair } from '../edition/curriculum'
import { implicitMove } from '../edition/index-edition'
import type { SkillFamily } from '../model'
import type { Place } from '../place'
import { alwaysBefore } from './before'
import { dependsOn } from './cycles'
import type { TreeKey } from './target'
import { levelKey, moveKey } from './target'

/** What stands in a family's tree: its own pairs and board moves, and ports to what they rest on elsewhere. */
export interface TreeNode {
  readonly kind: 'pair' | 'move' | 'port'
  readonly key: TreeKey
  readonly place: Place
  /** Null for a board move and a level. */
  readonly pair: Pair | null
  readonly title: string
}

/** An edge of the tree, from what comes before. */
export interface TreeEdge {
  readonly from: TreeKey
  readonly to: TreeKey
}

/** A family's part of the tree. */
export interface FamilyGraph {
  /** Ports last. */
  readonly nodes: readonly TreeNode[]
  /** Every edge into the family's own pairs and moves. */
  readonly edges: readonly TreeEdge[]
  /** Those that no other way through the tree says as well: what is drawn. */
  readonly drawn: readonly TreeEdge[]
}

/** The skill families of an edition, in the order in which it first names them, safety first. */
export function listFamilies(curriculum: Curriculum): SkillFamily[] {
  const named = new Set(curriculum.document.skills.map(({ family }) => family))
  return [...named].sort((a, b) => Number(b === 'safety') - Number(a === 'safety'))
}

/** A family as screens write it: "Forward", "Safety". */
export const familyName = (family: string): string => family.charAt(0).toUpperCase() + family.slice(1)

function findPort(curriculum: Curriculum, key: TreeKey, place: Place): TreeNode | null {
  const pair = (curriculum.pairs as ReadonlyMap<TreeKey, Pair>).get(key)
  if (pair) return { kind: 'port', key, place: pair.holding.place, pair, title: pair.skill.title }
  const move = curriculum.boardMoves.find((one) => moveKey(one) === key)
  if (move) return { kind: 'port', key, place: move.to, pair: null, title: move.title }
  const level = curriculum.levels.find((one) => levelKey(one.key) === key)
  return level ? { kind: 'port', key, place, pair: null, title: level.title } : null
}

/** Edges that every diver takes: their start is held before their end, whichever way she goes. */
function listCertain(curriculum: Curriculum, edges: readonly TreeEdge[]): TreeEdge[] {
  const before = alwaysBefore(curriculum)
  const moves = new Map<TreeKey, TreeKey>()
  for (const { key, skill, at } of curriculum.pairs.values()) {
    const move = implicitMove(curriculum.boardMoves, skill, at)
    if (move) moves.set(key, moveKey(move))
  }
  const always = (first: TreeKey, then: TreeKey): boolean => (before(then) as ReadonlySet<TreeKey>).has(first)
  return edges.filter(({ from, to }) => always(from, to) || moves.get(to) === from)
}

/** Leaves out the edges that a longer way of certain edges says already. */
function withoutShortCuts(curriculum: Curriculum, edges: readonly TreeEdge[]): TreeEdge[] {
  const certain = listCertain(curriculum, edges)
  const known = new Map<TreeKey, ReadonlySet<TreeKey>>()
  const leadingTo = (key: TreeKey): ReadonlySet<TreeKey> => {
    const found = known.get(key)
    if (found) return found
    const starts = certain.filter(({ to }) => to === key).map(({ from }) => from)
    known.set(key, new Set())
    const all = new Set(starts.flatMap((start) => [start, ...leadingTo(start)]))
    known.set(key, all)
    return all
  }
  return edges.filter(
    ({ from, to }) => !certain.some((last) => last.to === to && last.from !== from && leadingTo(last.from).has(from)),
  )
}

/**
 * The part of the tree that a family's page shows. Prerequisites of other families are ports, at their own place; a
 * level that a pair asks for is a port at the pair's place. A name that leads nowhere is left out: the linter says so.
 */
export function familyGraph(curriculum: Curriculum, family: SkillFamily): FamilyGraph {
  const own: TreeNode[] = [
    ...[...curriculum.pairs.values()]
      .filter(({ skill }) => skill.family === family)
      .map(
        (pair): TreeNode => ({ kind: 'pair', key: pair.key, place: pair.holding.place, pair, title: pair.skill.title }),
      ),
    ...curriculum.boardMoves
      .filter((move) => move.family === family)
      .map((move): TreeNode => ({ kind: 'move', key: moveKey(move), place: move.to, pair: null, title: move.title })),
  ]
  const nodes = new Map<TreeKey, TreeNode>(own.map((node) => [node.key, node]))
  const edges: TreeEdge[] = []
  for (const node of own) {
    const requirement =
      node.pair?.prerequisite ?? curriculum.boardMoves.find((move) => moveKey(move) === node.key)?.requirement
    for (const from of new Set(requirement ? dependsOn(requirement) : [])) {
      const known = nodes.get(from) ?? findPort(curriculum, from, node.place)
      if (!known || from === node.key) continue
      nodes.set(from, known)
      edges.push({ from, to: node.key })
    }
  }
  return { nodes: [...nodes.values()], edges, drawn: withoutShortCuts(curriculum, edges) }
}
