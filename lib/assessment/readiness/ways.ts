import type { Finding } from './finding'
import { attemptsByPair, nothingToDo, type Plan, together, withoutNeedless } from './plan'

/** All ways to meet a requirement that are worth weighing, or the leaves that stand in the way of every one. */
export type Ways = { readonly plans: readonly Plan[]; readonly exact: boolean } | { readonly never: readonly Finding[] }

const mostPlans = 24
/** Nothing is left to do. */
export const done: Ways = { plans: [nothingToDo], exact: true }
/** A decision, by what it is about. */
export const decided = (what: string): Plan => ({ ...nothingToDo, decisions: new Set([what]) })

/** How many good attempts a plan asks for. */
export const attemptsOf = (plan: Plan): number =>
  [...attemptsByPair(plan).values()].reduce((sum, count) => sum + count, 0)

/** What is worth weighing further; cut short where there are too many, cheapest kept. */
function weigh(plans: readonly Plan[], exact: boolean): Ways {
  const kept = withoutNeedless(plans)
  if (kept.length <= mostPlans) return { plans: kept, exact }
  const cheapest = kept.map((plan) => ({ plan, cost: attemptsOf(plan) })).sort((a, b) => a.cost - b.cost)
  return { plans: cheapest.slice(0, mostPlans).map(({ plan }) => plan), exact: false }
}

/** Ways to meet two requirements together. */
export function both(a: Ways, b: Ways): Ways {
  if ('never' in a) return 'never' in b ? { never: [...a.never, ...b.never] } : a
  if ('never' in b || a === done) return b
  if (b === done) return a
  return weigh(
    a.plans.flatMap((one) => b.plans.map((other) => together(one, other))),
    a.exact && b.exact,
  )
}

/** `n` of the children, whichever come cheapest: every choice is weighed. */
export function some(children: readonly Ways[], n: number): Ways {
  if (n <= 0) return done
  const possible = children.filter((child) => !('never' in child))
  if (possible.length < n) return { never: children.flatMap((child) => ('never' in child ? child.never : [])) }
  const [first, ...rest] = possible
  if (!first) return done
  const withFirst = both(first, some(rest, n - 1))
  const without = rest.length >= n ? some(rest, n) : null
  if (!without || 'never' in without) return withFirst
  return 'never' in withFirst
    ? without
    : weigh([...withFirst.plans, ...without.plans], withFirst.exact && without.exact)
}
