import type { Curriculum, PairKey } from '../edition/curriculum'
import { pairKey } from '../edition/curriculum'
import type { Requirement, RequirementReader } from '../requirement/model'
import { readRequirement } from '../requirement/model'
import type { TreeKey } from './target'
import { levelKey, listTargets, moveKey } from './target'

type Pairs = ReadonlySet<PairKey>
type Look = (key: TreeKey) => Pairs

const nothing: Pairs = new Set()

/** The pairs that at least `times` of the sets contain. */
function inAtLeast(times: number, sets: readonly Pairs[]): Pairs {
  const counts = new Map<PairKey, number>()
  for (const set of sets) for (const pair of set) counts.set(pair, (counts.get(pair) ?? 0) + 1)
  return new Set([...counts].filter(([, count]) => count >= times).map(([pair]) => pair))
}

const everyWay: RequirementReader<Pairs, Look> = {
  all: (node, look) =>
    inAtLeast(
      1,
      node.of.map((child) => pairsOf(child, look)),
    ),
  any: (node, look) =>
    inAtLeast(
      node.of.length,
      node.of.map((child) => pairsOf(child, look)),
    ),
  // However n of m are chosen, one of any m − n + 1 is among them.
  atLeast: (node, look) =>
    inAtLeast(
      node.of.length - node.n + 1,
      node.of.map((child) => pairsOf(child, look)),
    ),
  signOff: (leaf, look) => new Set([pairKey(leaf), ...look(pairKey(leaf))]),
  // It is rated where the pair is open; being rated there is not yet holding it.
  criterion: (leaf, look) =>
    inAtLeast(
      leaf.at.length,
      leaf.at.map((at) => look(pairKey(at))),
    ),
  level: (leaf, look) => look(levelKey(leaf.level)),
  boardMove: (leaf, look) => look(moveKey(leaf)),
  age: () => nothing,
  // Whatever one list names, another may do without.
  diveList: () => nothing,
  venue: () => nothing,
}

const pairsOf = (requirement: Requirement, look: Look): Pairs => readRequirement(everyWay, requirement, look)

/**
 * The pairs that every diver holds before a target, whichever way she takes through `any` and `atLeast`. A lower bound:
 * what is before a target only by being counted in several ways at once may be missing. On a cycle it is empty.
 */
export function alwaysBefore(curriculum: Curriculum): Look {
  const targets = new Map(listTargets(curriculum).map((target) => [target.key, target]))
  const known = new Map<TreeKey, Pairs>()
  const look: Look = (key) => {
    const found = known.get(key)
    if (found) return found
    known.set(key, nothing)
    const requirement = targets.get(key)?.requirement
    const pairs = requirement ? pairsOf(requirement, look) : nothing
    known.set(key, pairs)
    return pairs
  }
  return look
}
