import type {
  BoardMoveLeaf,
  LevelLeaf,
  Requirement,
  RequirementReader,
  SignOffLeaf,
} from '../curriculum/requirement/model'
import { readRequirement } from '../curriculum/requirement/model'

/** A leaf that asks for something that is held: the only kind that can fall under what was built on it. */
export type HeldLeaf = SignOffLeaf | LevelLeaf | BoardMoveLeaf

/** How a held leaf is looked at: was it ever held, is it held now. Other leaves are passed over as there. */
export type Lens = (leaf: HeldLeaf) => boolean

const seen: RequirementReader<boolean, Lens> = {
  all: (node, lens) => node.of.every((child) => holdsIn(child, lens)),
  any: (node, lens) => node.of.some((child) => holdsIn(child, lens)),
  atLeast: (node, lens) => node.of.filter((child) => holdsIn(child, lens)).length >= node.n,
  signOff: (leaf, lens) => lens(leaf),
  level: (leaf, lens) => lens(leaf),
  boardMove: (leaf, lens) => lens(leaf),
  criterion: () => true,
  // Which dives a list rests on is not fixed: another may stand in for one that fell.
  diveList: () => true,
  age: () => true,
  venue: () => true,
}

/** Whether a requirement holds when its held leaves are looked at through a lens. */
export const holdsIn = (node: Requirement, lens: Lens): boolean => readRequirement(seen, node, lens)

const kept = (nodes: readonly Requirement[], lens: Lens): Requirement[] =>
  nodes.flatMap((node) => keptIn(node, lens) ?? [])

const pruned: RequirementReader<Requirement | null, Lens> = {
  all: (node, lens) => ({ ...node, of: kept(node.of, lens) }),
  any: (node, lens) => {
    const of = kept(node.of, lens)
    return of.length === 0 ? null : { ...node, of }
  },
  atLeast: (node, lens) => {
    const of = kept(node.of, lens)
    return of.length === 0 ? null : { ...node, of, n: Math.min(node.n, of.length) }
  },
  signOff: (leaf, lens) => (lens(leaf) ? leaf : null),
  level: (leaf, lens) => (lens(leaf) ? leaf : null),
  boardMove: (leaf, lens) => (lens(leaf) ? leaf : null),
  criterion: (leaf) => leaf,
  diveList: (leaf) => leaf,
  age: (leaf) => leaf,
  venue: (leaf) => leaf,
}

/** The requirement without the held leaves that the lens does not see; null when nothing is left of it. */
export const keptIn = (node: Requirement, lens: Lens): Requirement | null => readRequirement(pruned, node, lens)

const leaf = (held: HeldLeaf, lens: Lens): HeldLeaf[] => (lens(held) ? [held] : [])
const some = (node: { readonly of: readonly Requirement[] }, lens: Lens): HeldLeaf[] =>
  node.of.flatMap((child) => (holdsIn(child, lens) ? restsOnIn(child, lens) : []))

const resting: RequirementReader<HeldLeaf[], Lens> = {
  all: some,
  any: some,
  atLeast: some,
  signOff: leaf,
  level: leaf,
  boardMove: leaf,
  criterion: () => [],
  diveList: () => [],
  age: () => [],
  venue: () => [],
}

/** The held leaves that a requirement rests on when it holds through the lens: those of every branch that holds. */
export const restsOnIn = (node: Requirement, lens: Lens): HeldLeaf[] => readRequirement(resting, node, lens)

interface Then {
  readonly ever: Lens
  readonly now: Lens
}
const fell = (held: HeldLeaf, { ever }: Then): HeldLeaf[] => (ever(held) ? [held] : [])
const fellBelow = (node: { readonly of: readonly Requirement[] }, { ever, now }: Then): HeldLeaf[] =>
  node.of.flatMap((child) => fallenIn(child, ever, now))

const falling: RequirementReader<HeldLeaf[], Then> = {
  all: fellBelow,
  any: fellBelow,
  atLeast: fellBelow,
  signOff: fell,
  level: fell,
  boardMove: fell,
  criterion: () => [],
  diveList: () => [],
  age: () => [],
  venue: () => [],
}

/** The held leaves for want of which a requirement holds no more: seen through `ever`, and not through `now`. */
export const fallenIn = (node: Requirement, ever: Lens, now: Lens): HeldLeaf[] =>
  holdsIn(node, now) ? [] : readRequirement(falling, node, { ever, now })
