import type { Curriculum, PairKey } from '../curriculum/edition/curriculum'
import { pairKey } from '../curriculum/edition/curriculum'
import type { BoardMoveLeaf, LevelLeaf, Requirement, SignOffLeaf } from '../curriculum/requirement/model'
import { holdsIn, keptIn, type Lens, restsOnIn } from './lens'
import type { DiverRecord, TargetKey } from './record'
import type { Signed } from './signed'
import { levelTarget, moveTarget, targetHold, targetKeyIn, targetRequirement } from './target-hold'

/** Pairs that something rests on, each with the lowest level index at which it does. */
export type Below = ReadonlyMap<PairKey, number>

/** The target that a leaf names, by the edition's own key; null when the edition has none such. */
export const targetOf = (curriculum: Curriculum, leaf: LevelLeaf | BoardMoveLeaf): TargetKey | null =>
  targetKeyIn(curriculum, leaf.kind === 'level' ? levelTarget(leaf.level) : moveTarget(leaf))

/** The level index that a sign-off leaf asks: its own, or the lowest that teaches the pair; −1 when unknown. */
export function askedLevel(curriculum: Curriculum, leaf: SignOffLeaf): number {
  const pair = curriculum.pairs.get(pairKey(leaf))
  return leaf.atLevel === undefined ? (pair?.level ?? -1) : curriculum.levelIndex(leaf.atLevel)
}

/**
 * What each pair of an edition rests on for one diver: the sign-off leaves among those that its prerequisite rests on,
 * and what those rest on in turn. A board move or level stands for what it asks. Whatever has an unrevoked sign-off or
 * recognition is taken as there, so that this depends on nothing that lapses or is in doubt.
 */
export function restingOf(
  curriculum: Curriculum,
  record: DiverRecord,
  signed: ReadonlyMap<PairKey, readonly Signed[]>,
): (pair: PairKey) => Below {
  const has: Lens = (leaf) => {
    if (leaf.kind !== 'signOff') {
      const target = targetOf(curriculum, leaf)
      const kind = target && targetHold(curriculum, record, target).kind
      return kind === 'approved' || kind === 'recognised'
    }
    const asked = askedLevel(curriculum, leaf)
    return signed.get(pairKey(leaf))?.some((one) => !one.revoked && asked >= 0 && one.level >= asked) ?? false
  }
  const walk = (node: Requirement | null, below: Map<PairKey, number>, met: Set<string>): void => {
    const rest = node && (holdsIn(node, has) ? node : keptIn(node, has))
    if (!rest) return
    for (const leaf of restsOnIn(rest, has)) {
      if (leaf.kind === 'signOff') {
        const key = pairKey(leaf)
        below.set(key, Math.min(askedLevel(curriculum, leaf), below.get(key) ?? Number.POSITIVE_INFINITY))
        follow(key, curriculum.pairs.get(key)?.prerequisite ?? null, below, met)
      } else {
        const target = targetOf(curriculum, leaf)
        if (target) follow(target, targetRequirement(curriculum, target), below, met)
      }
    }
  }
  const follow = (name: string, node: Requirement | null, below: Map<PairKey, number>, met: Set<string>): void => {
    if (met.has(name)) return
    met.add(name)
    walk(node, below, met)
  }
  const known = new Map<PairKey, Below>()
  return (pair) => {
    const found = known.get(pair)
    if (found) return found
    const below = new Map<PairKey, number>()
    follow(pair, curriculum.pairs.get(pair)?.prerequisite ?? null, below, new Set())
    below.delete(pair)
    known.set(pair, below)
    return below
  }
}
