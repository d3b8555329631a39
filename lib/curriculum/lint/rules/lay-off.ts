import { pairKey } from '../../edition/curriculum'
import { pointerTo } from '../../edition/pointer'
import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'
import { nameOf } from '../subject'

/** Re-entry steps at another place, and steps that rest on what the lay-off keeps closed: nobody could come back. */
export const layOff: Rule = ({ document, pairs, before }) => {
  const names = new Map(pairs.map(({ pair, name }) => [pair.key, name]))
  return document.layOff.flatMap((rule, r) => {
    const { label } = placeFacts[rule.place]
    const steps = new Set(rule.reentry.map(pairKey))
    return rule.reentry.flatMap((step, index): LintProblem[] => {
      const path = pointerTo('layOff', r, 'reentry', index)
      const blocked = (message: string): LintProblem => ({ code: 'reentry-blocked', path, message })
      if (step.place !== rule.place)
        return [
          blocked(
            `after a break at ${label} the first steps are met there, not as ${nameOf(step)}; name a skill at ${label}`,
          ),
        ]
      return [...before(pairKey(step))]
        .filter((key) => key.endsWith(`@${rule.place}`) && !steps.has(key))
        .map((key) =>
          blocked(`after a break ${nameOf(step)} waits for ${names.get(key)}, which stays closed; add that as a step`),
        )
    })
  })
}
