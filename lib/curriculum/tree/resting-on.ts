import type { Curriculum, PairKey } from '../edition/curriculum'
import { pairKey } from '../edition/curriculum'
import { listNodes } from '../requirement/references'
import { levelKey, listTargets, moveKey, type TreeKey } from './target'

/** Whatever each target names in its requirement, anywhere in it. */
function namedBy(curriculum: Curriculum): ReadonlyMap<TreeKey, readonly TreeKey[]> {
  return new Map(
    listTargets(curriculum).map(({ key, requirement }) => [
      key,
      (requirement ? listNodes(requirement) : []).flatMap(({ node }): TreeKey[] => {
        if (node.kind === 'signOff') return [pairKey(node)]
        if (node.kind === 'criterion') return node.at.map(pairKey)
        if (node.kind === 'level') return [levelKey(node.level)]
        return node.kind === 'boardMove' ? [moveKey(node)] : []
      }),
    ]),
  )
}

/**
 * The pairs that can rest on `pair`, whichever way a diver takes: an upper bound, without her record. `pair` itself is not
 * among them, nor is anything for a pair that the edition does not have.
 */
export function canRestOn(curriculum: Curriculum, pair: PairKey): ReadonlySet<PairKey> {
  const named = namedBy(curriculum)
  const reached = new Set<TreeKey>([pair])
  for (let before = 0; before < reached.size; ) {
    before = reached.size
    for (const [key, names] of named) if (names.some((name) => reached.has(name))) reached.add(key)
  }
  return new Set([...curriculum.pairs.keys()].filter((key) => key !== pair && reached.has(key)))
}
