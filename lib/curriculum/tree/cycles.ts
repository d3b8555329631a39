import type { Curriculum } from '../edition/curriculum'
import { pairKey } from '../edition/curriculum'
import type { Branch, Requirement, RequirementReader } from '../requirement/model'
import { readRequirement } from '../requirement/model'
import type { TreeKey, TreeTarget } from './target'
import { levelKey, listTargets, moveKey } from './target'

const none = (): TreeKey[] => []
const under = (node: Branch): TreeKey[] => node.of.flatMap(dependsOn)

const named: RequirementReader<TreeKey[], null> = {
  all: under,
  any: under,
  atLeast: under,
  signOff: (leaf) => [pairKey(leaf)],
  criterion: (leaf) => leaf.at.map(pairKey),
  level: (leaf) => [levelKey(leaf.level)],
  boardMove: (leaf) => [moveKey(leaf)],
  age: none,
  // It names no dive; a list that waits for its own level is found as out of reach.
  diveList: none,
  venue: none,
}

/** The targets that a requirement names anywhere, in reading order. */
export const dependsOn = (requirement: Requirement): TreeKey[] => readRequirement(named, requirement, null)

/** What each target names directly: the edges of the skill tree, from a target to what comes before it. */
export function prerequisiteGraph(curriculum: Curriculum): ReadonlyMap<TreeKey, readonly TreeKey[]> {
  return new Map(
    listTargets(curriculum).map((target) => [target.key, target.requirement ? dependsOn(target.requirement) : []]),
  )
}

/**
 * Circles of targets that wait for each other, each as the walk from a target back to itself without its repetition.
 * Every knot of targets gives at least one; empty when the graph can be drawn from left to right.
 */
export function listCycles(curriculum: Curriculum): TreeTarget[][] {
  const graph = prerequisiteGraph(curriculum)
  const targets = new Map(listTargets(curriculum).map((target) => [target.key, target]))
  const done = new Set<TreeKey>()
  const walk: TreeKey[] = []
  const cycles: TreeTarget[][] = []

  function visit(key: TreeKey): void {
    const at = walk.indexOf(key)
    if (at >= 0) {
      cycles.push(walk.slice(at).flatMap((step) => targets.get(step) ?? []))
      return
    }
    if (done.has(key) || !targets.has(key)) return
    walk.push(key)
    for (const next of graph.get(key) ?? []) visit(next)
    walk.pop()
    done.add(key)
  }

  for (const key of targets.keys()) visit(key)
  return cycles
}
