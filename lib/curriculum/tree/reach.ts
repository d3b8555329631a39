import type { Curriculum } from '../edition/curriculum'
import { pairKey } from '../edition/curriculum'
import { entriesAt } from '../event/entry'
import { whyNoList } from '../event/why-no-list'
import type { Requirement, RequirementReader } from '../requirement/model'
import { readRequirement } from '../requirement/model'
import type { TreeKey } from './target'
import { levelKey, listTargets, moveKey } from './target'

/** What can be had so far, and the curriculum in which it is had. */
interface Reached {
  readonly curriculum: Curriculum
  readonly keys: ReadonlySet<TreeKey>
}

const held = (key: TreeKey, { keys }: Reached): boolean => keys.has(key)

const attaches = (curriculum: Curriculum, criterion: string, at: Parameters<typeof pairKey>[0]): boolean =>
  curriculum.pairs.get(pairKey(at))?.criteria.some((attached) => attached.criterion.key === criterion) ?? false

function canEnter(key: string, { curriculum, keys }: Reached): boolean {
  const event = curriculum.events.get(key)
  if (!event) return false
  return (
    whyNoList(
      event.parts,
      entriesAt(curriculum, event.place).filter(({ pair }) => keys.has(pair)),
    ).length === 0
  )
}

/** Whether a diver who can do everything, and has time, could meet a requirement from what is reached. */
const possible: RequirementReader<boolean, Reached> = {
  all: (node, reached) => node.of.every((child) => canMeet(child, reached)),
  any: (node, reached) => node.of.some((child) => canMeet(child, reached)),
  atLeast: (node, reached) => node.of.filter((child) => canMeet(child, reached)).length >= node.n,
  signOff: (leaf, reached) =>
    held(pairKey(leaf), reached) && (leaf.atLevel === undefined || reached.curriculum.levelIndex(leaf.atLevel) >= 0),
  criterion: (leaf, reached) =>
    leaf.times <= leaf.of &&
    leaf.at.some((at) => held(pairKey(at), reached) && attaches(reached.curriculum, leaf.criterion, at)),
  level: (leaf, reached) => held(levelKey(leaf.level), reached),
  boardMove: (leaf, reached) => held(moveKey(leaf), reached),
  age: (leaf) => (leaf.min ?? 0) <= (leaf.max ?? Number.POSITIVE_INFINITY),
  diveList: (leaf, reached) => canEnter(leaf.event, reached),
  venue: () => true,
}

/** True when the requirement could be met by someone who holds what is in `reached`. */
export const canMeet = (requirement: Requirement, reached: Reached): boolean =>
  readRequirement(possible, requirement, reached)

/** Everything that a diver could come to hold, starting from nothing: the least fixed point of the prerequisites. */
export function reachable(curriculum: Curriculum): ReadonlySet<TreeKey> {
  const keys = new Set<TreeKey>()
  let waiting = listTargets(curriculum)
  for (;;) {
    const opened = waiting.filter(
      ({ requirement }) => requirement === null || canMeet(requirement, { curriculum, keys }),
    )
    if (opened.length === 0) return keys
    for (const target of opened) keys.add(target.key)
    waiting = waiting.filter((target) => !keys.has(target.key))
  }
}
