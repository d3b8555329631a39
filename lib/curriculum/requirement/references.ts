import type { Pointer } from '../edition/pointer'
import { pointerTo } from '../edition/pointer'
import type { Leaf, Requirement, RequirementReader } from './model'
import { readRequirement } from './model'

/** A node with its place: `path` is a JSON Pointer from where the requirement itself stands. */
export interface Placed<Of extends Requirement = Requirement> {
  readonly node: Of
  readonly path: Pointer
}

const leaf = (node: Leaf, path: Pointer): Placed[] => [{ node, path }]

const branch = (node: Requirement & { readonly of: readonly Requirement[] }, path: Pointer): Placed[] => [
  { node, path },
  ...node.of.flatMap((child, index) => listNodes(child, path + pointerTo('of', index))),
]

const nodes: RequirementReader<Placed[], Pointer> = {
  all: branch,
  any: branch,
  atLeast: branch,
  signOff: leaf,
  criterion: leaf,
  level: leaf,
  boardMove: leaf,
  age: leaf,
  diveList: leaf,
  venue: leaf,
}

/** Every node of a requirement in reading order, the root first; paths begin with `from`. */
export const listNodes = (requirement: Requirement, from: Pointer = ''): Placed[] =>
  readRequirement(nodes, requirement, from)

/** Every node of one kind, in reading order. */
export const listOfKind = <Kind extends Requirement['kind']>(
  requirement: Requirement,
  kind: Kind,
  from: Pointer = '',
): Placed<Extract<Requirement, { kind: Kind }>>[] =>
  listNodes(requirement, from).filter(
    (placed): placed is Placed<Extract<Requirement, { kind: Kind }>> => placed.node.kind === kind,
  )
