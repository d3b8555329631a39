import type { Finding } from './finding'
import { attemptsByPair, beyond, common, nothingToDo, type Plan, together, withoutNeedless } from './plan'

/**
 * All ways to meet a requirement that are worth weighing: what every one of them asks, and what each asks beyond it. Or
 * the leaves that stand in the way of every one. `exact` is false where some were left out.
 */
export type Ways =
  | { readonly always: Plan; readonly beyond: readonly Plan[]; readonly exact: boolean }
  | { readonly never: readonly Finding[] }

/** So many ways are followed at most. Far from ready, where nobody counts single attempts, a bound from a few is enough. */
const mostPlans = (always: Plan): number => (always.attempts.size > 8 ? 4 : 24)

/** The one way that a plan is. */
export const oneWay = (plan: Plan, exact = true): Ways => ({ always: plan, beyond: [nothingToDo], exact })

/** Nothing is left to do. */
export const done: Ways = oneWay(nothingToDo)
/** A decision, by what it is about. */
export const decided = (what: string): Plan => ({ ...nothingToDo, decisions: new Set([what]) })

/** How many good attempts a plan asks for. */
export const attemptsOf = (plan: Plan): number =>
  [...attemptsByPair(plan).values()].reduce((sum, count) => sum + count, 0)

/** Each way as a whole plan. */
export const plansOf = ({ always, beyond }: Exclude<Ways, { never: unknown }>): Plan[] =>
  beyond.map((plan) => together(always, plan))

/** What a plan costs beyond another, counting pooled attempts in full: enough to tell cheap ways from dear ones. */
const extraOf = (plan: Plan, always: Plan): number =>
  [...plan.attempts].reduce((sum, [pair, count]) => sum + count - (always.attempts.get(pair) ?? 0), 0) +
  plan.pooled.reduce((sum, { count }) => sum + count, 0)

const cheapest = (plans: readonly Plan[], always: Plan, most: number): Plan[] =>
  plans
    .map((plan) => ({ plan, cost: extraOf(plan, always) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, most)
    .map(({ plan }) => plan)

/** What is worth weighing further; cut short where there are too many, cheapest kept. */
function weigh(always: Plan, plans: readonly Plan[], exact: boolean): Ways {
  const extra = plans.map((plan) => beyond(always, plan))
  const most = mostPlans(always)
  const weighed = extra.length > 6 * most ? cheapest(extra, always, 6 * most) : extra
  const kept = withoutNeedless(weighed)
  const [only] = kept
  if (kept.length === 1 && only) return oneWay(together(always, only), exact && weighed === extra)
  const isWhole = kept.length <= most
  return {
    always,
    beyond: isWhole ? kept : cheapest(kept, always, most),
    exact: exact && isWhole && weighed === extra,
  }
}

/** Ways to meet two requirements together. */
export function both(a: Ways, b: Ways): Ways {
  if ('never' in a) return 'never' in b ? { never: [...a.never, ...b.never] } : a
  if ('never' in b || a === done) return b
  if (b === done) return a
  return weigh(
    together(a.always, b.always),
    a.beyond.flatMap((one) => b.beyond.map((other) => together(one, other))),
    a.exact && b.exact,
  )
}

function either(a: Ways, b: Ways): Ways {
  if ('never' in a) return b
  if ('never' in b) return a
  const plans = [...plansOf(a), ...plansOf(b)]
  return weigh(plans.reduce(common), plans, a.exact && b.exact)
}

/** `n` of the children, whichever come cheapest: every choice is weighed. */
export function some(children: readonly Ways[], n: number): Ways {
  if (n <= 0) return done
  const possible = children.filter((child) => !('never' in child))
  if (possible.length < n) return { never: children.flatMap((child) => ('never' in child ? child.never : [])) }
  // After each child: the ways to have met so many of those looked at.
  const reached: Ways[] = [done]
  for (const child of possible)
    for (let met = Math.min(n, reached.length); met > 0; met--) {
      const before = reached[met - 1]
      if (!before) continue
      const taken = both(before, child)
      const without = reached[met]
      reached[met] = without ? either(without, taken) : taken
    }
  return reached[n] ?? done
}
