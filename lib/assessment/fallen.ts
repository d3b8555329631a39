import type { Curriculum, PairKey } from '../curriculum/edition/curriculum'
import { pairKey } from '../curriculum/edition/curriculum'
import type { Requirement } from '../curriculum/requirement/model'
import { type HoldingState, isCurrentAt } from './holding-state'
import { fallenIn, holdsIn, keptIn, type Lens } from './lens'
import type { DiverRecord } from './record'
import { askedLevel, targetOf } from './rests-on'
import type { Doubt } from './shortfall'
import type { Signed } from './signed'
import { targetHold, targetRequirement, wasHeld } from './target-hold'

/**
 * Doubts from below: what a prerequisite names that was held, is held no more, and without which it does not hold.
 * A leaf that was never held has not fallen; a board move or level falls when it is withdrawn or when what it asks
 * fell, not when a criterion's window or an age runs out.
 */
export function fallenBelow(
  curriculum: Curriculum,
  record: DiverRecord,
  signed: ReadonlyMap<PairKey, readonly Signed[]>,
  of: (pair: PairKey) => HoldingState,
): (prerequisite: Requirement) => Doubt[] {
  const ever: Lens = (leaf) => {
    if (leaf.kind !== 'signOff') {
      const target = targetOf(curriculum, leaf)
      return target !== null && wasHeld(curriculum, record, target)
    }
    const asked = askedLevel(curriculum, leaf)
    return asked >= 0 && (signed.get(pairKey(leaf))?.some((one) => one.level >= asked) ?? false)
  }
  const fallenOf = (node: Requirement, met: ReadonlySet<string>): Doubt[] => {
    const below = (target: string, requirement: Requirement): Doubt[] =>
      met.has(target) ? [] : fallenOf(requirement, new Set([...met, target]))
    const now: Lens = (leaf) => {
      if (leaf.kind === 'signOff') return isCurrentAt(of(pairKey(leaf)), askedLevel(curriculum, leaf))
      const target = targetOf(curriculum, leaf)
      const requirement = target && targetRequirement(curriculum, target)
      if (!target || !requirement) return false
      const { kind } = targetHold(curriculum, record, target)
      return kind === 'recognised' || (kind === 'approved' && below(target, requirement).length === 0)
    }
    const asked = holdsIn(node, ever) ? node : keptIn(node, ever)
    if (!asked) return []
    return fallenIn(asked, ever, now).flatMap((leaf): Doubt[] => {
      if (leaf.kind === 'signOff') return [{ kind: 'below', pair: pairKey(leaf) }]
      const target = targetOf(curriculum, leaf)
      const requirement = target && targetRequirement(curriculum, target)
      if (!target || !requirement) return []
      const because = targetHold(curriculum, record, target).kind === 'approved' ? below(target, requirement) : []
      return because.length > 0 ? because : [{ kind: 'withdrawn below', target }]
    })
  }
  return (prerequisite) => fallenOf(prerequisite, new Set())
}
