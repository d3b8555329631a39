import type { BoardMoveLeaf, LevelLeaf } from '../../curriculum/requirement/model'
import type { TargetKey } from '../record'
import { targetOf } from '../rests-on'
import { targetHold } from '../target-hold'
import type { Context, Evaluation } from './evaluation'
import type { Finding } from './finding'
import { leafFinding, notInEdition } from './leaf'

/** Finds what a target itself asks, always as an advancement; null while that very question is being answered. */
export type FindTarget = (target: TargetKey, waivesAge: boolean) => Finding | null

/**
 * Met when approved and what it asks still holds (age waived where the decision waived it); approved but failing is
 * to review; withdrawn is unmet. What was recognised is met in training; inside a level or move only when its own
 * requirement is met here. The child is what the target asks.
 */
export function targetFinding(
  leaf: LevelLeaf | BoardMoveLeaf,
  { curriculum, record }: Evaluation,
  context: Context,
  find: FindTarget,
): Finding {
  const target = targetOf(curriculum, leaf)
  if (target === null) return notInEdition(leaf, leaf.kind === 'level' ? leaf.level : `${leaf.family} at ${leaf.to}`)
  const hold = targetHold(curriculum, record, target)
  const own = find(target, hold.kind === 'approved' && hold.waivesAge)
  const holds = own?.status === 'met'
  const follow = (finding: Finding): Finding => (own ? { ...finding, children: [own], binding: [0] } : finding)
  if (hold.kind === 'approved') {
    const { id, day, outcome } = hold.decision
    if (!holds) return follow(leafFinding(leaf, 'lapsed', { code: 'to review', target, day }, [id]))
    const byOverride = outcome === 'override'
    return follow(leafFinding(leaf, 'met', { code: 'approved', target, day, byOverride, recognised: false }, [id]))
  }
  if (hold.kind === 'withdrawn')
    return leafFinding(leaf, 'unmet', { code: 'withdrawn', target, day: hold.decision.day }, [hold.decision.id])
  if (hold.kind === 'recognised') {
    const { id, day } = hold.recognition
    if (context === 'training' || holds)
      return follow(
        leafFinding(leaf, 'met', { code: 'approved', target, day, byOverride: false, recognised: true }, [id]),
      )
    return follow(leafFinding(leaf, 'unproven', { code: 'recognised, not shown here', target }, [id]))
  }
  const waiting = leafFinding(leaf, 'unproven', { code: 'not approved', target })
  return holds ? { ...waiting, children: [own] } : follow(waiting)
}
