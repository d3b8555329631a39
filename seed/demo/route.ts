import { levelTarget, moveTarget, targetRequirement } from '../../lib/assessment/target-hold'
import { type Curriculum, type Pair, type PairKey, pairKey } from '../../lib/curriculum/edition/curriculum'
import type { BoardMove } from '../../lib/curriculum/model'
import { type Requirement, type RequirementReader, readRequirement } from '../../lib/curriculum/requirement/model'

/** A pair on the way, and the level index at which the way wants it. */
export interface Step {
  readonly pair: Pair
  readonly level: number
}

interface Walk {
  readonly curriculum: Curriculum
  /** Which of several branches a diver takes: any whole number, the same for all of her way. */
  readonly taste: number
  readonly leavesOut: ReadonlySet<PairKey>
  readonly steps: Step[]
  /** The level index at which each pair stands on the way so far. */
  readonly reached: Map<PairKey, number>
  /** Requirements on the way down. */
  readonly within: Set<Requirement>
  readonly moves: Set<BoardMove>
}

/** The branches in the order in which this diver would take them: what is nearly done already, then by taste. */
function byTaste(nodes: readonly Requirement[], walk: Walk): Requirement[] {
  const cost = nodes.map((node, index) => {
    const ahead: Walk = {
      ...walk,
      steps: [],
      reached: new Map(walk.reached),
      within: new Set(walk.within),
      moves: new Set(),
    }
    take(node, ahead)
    const blocked = ahead.steps.some(({ pair }) => walk.leavesOut.has(pair.key))
    const turned = (index + walk.taste) % nodes.length
    return { node, cost: ahead.steps.length + turned / nodes.length + (blocked ? 1_000 : 0) }
  })
  return cost.sort((a, b) => a.cost - b.cost).map(({ node }) => node)
}

function some(nodes: readonly Requirement[], n: number, walk: Walk): void {
  for (const node of byTaste(nodes, walk).slice(0, n)) take(node, walk)
}

function takePair(key: PairKey, level: number, walk: Walk): void {
  const pair = walk.curriculum.pairs.get(key)
  if (!pair) throw new Error(`the curriculum asks for ${key}, which it does not have`)
  const wanted = Math.max(level, pair.level)
  if ((walk.reached.get(key) ?? -1) >= wanted) return
  if (pair.prerequisite) take(pair.prerequisite, walk)
  // Asked again at a higher level, it is taken up once more from there.
  walk.reached.set(key, wanted)
  walk.steps.push({ pair, level: wanted })
}

const reader: RequirementReader<void, Walk> = {
  all: (node, walk) => {
    for (const child of node.of) take(child, walk)
  },
  any: (node, walk) => some(node.of, 1, walk),
  atLeast: (node, walk) => some(node.of, node.n, walk),
  signOff: (leaf, walk) =>
    takePair(pairKey(leaf), leaf.atLevel === undefined ? -1 : walk.curriculum.levelIndex(leaf.atLevel), walk),
  criterion: (leaf, walk) => {
    if (!leaf.at.some((at) => walk.reached.has(pairKey(at))) && leaf.at[0]) takePair(pairKey(leaf.at[0]), -1, walk)
  },
  level: (leaf, walk) => takeTarget(levelTarget(leaf.level), walk),
  boardMove: (leaf, walk) => {
    const move = walk.curriculum.boardMove(leaf.family, leaf.to)
    if (move) walk.moves.add(move)
    takeTarget(moveTarget(leaf), walk)
  },
  age: () => undefined,
  venue: () => undefined,
  // What a list is made of is on the way already.
  diveList: () => undefined,
}

function takeTarget(target: ReturnType<typeof levelTarget> | ReturnType<typeof moveTarget>, walk: Walk): void {
  const requirement = targetRequirement(walk.curriculum, target)
  if (requirement) take(requirement, walk)
}

function take(node: Requirement, walk: Walk): void {
  if (walk.within.has(node)) return
  walk.within.add(node)
  readRequirement(reader, node, walk)
  walk.within.delete(node)
}

/** Everything that a diver works through on her way to a level, in the order in which a coach takes it up. */
export interface Route {
  readonly steps: readonly Step[]
  readonly moves: readonly BoardMove[]
}

/**
 * The way to a level: what a pair rests on before the pair, a skill once more where a higher level asks it again, and of
 * several ways the one that suits the diver.
 */
export function routeTo(
  curriculum: Curriculum,
  level: string,
  taste: number,
  leavesOut: readonly PairKey[] = [],
): Route {
  const walk: Walk = {
    curriculum,
    taste,
    leavesOut: new Set(leavesOut),
    steps: [],
    reached: new Map(),
    within: new Set(),
    moves: new Set(),
  }
  for (const { key } of curriculum.levels) {
    takeTarget(levelTarget(key), walk)
    if (key === level) break
  }
  return { steps: walk.steps.filter(({ pair }) => !walk.leavesOut.has(pair.key)), moves: [...walk.moves] }
}
