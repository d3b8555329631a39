import type { PairKey } from '../../curriculum/edition/curriculum'
import type { EpochDay } from '../time'

/** Good attempts wanted over several pairs together, wherever they are dived: what a criterion leaf asks. */
export interface Pooled {
  readonly pairs: readonly PairKey[]
  readonly count: number
}

/** One way to meet a requirement, as what is still to be done. Good attempts at a pair serve every leaf that wants them. */
export interface Plan {
  /** Good attempts wanted at a pair: the most that any of its leaves wants. */
  readonly attempts: ReadonlyMap<PairKey, number>
  readonly pooled: readonly Pooled[]
  /** Pairs that can be dived once this is carried out; pooled attempts are dived at these. */
  readonly opened: ReadonlySet<PairKey>
  /** Decisions by what they are about: a sign-off, an approval, a release, a fact to record. */
  readonly decisions: ReadonlySet<string>
  readonly notBefore: EpochDay | null
}

/** Nothing is to be done. */
export const nothingToDo: Plan = {
  attempts: new Map(),
  pooled: [],
  opened: new Set(),
  decisions: new Set(),
  notBefore: null,
}

const union = <Item>(a: ReadonlySet<Item>, b: ReadonlySet<Item>): ReadonlySet<Item> =>
  b.size === 0 ? a : a.size === 0 ? b : new Set([...a, ...b])

const later = (a: EpochDay | null, b: EpochDay | null): EpochDay | null =>
  a === null ? b : b === null ? a : Math.max(a, b)

function most(a: Plan['attempts'], b: Plan['attempts']): Plan['attempts'] {
  if (b.size === 0) return a
  const both = new Map(a)
  for (const [pair, count] of b) both.set(pair, Math.max(both.get(pair) ?? 0, count))
  return both
}

/** Both plans carried out: what they share is done once. */
export const together = (a: Plan, b: Plan): Plan => ({
  attempts: most(a.attempts, b.attempts),
  pooled: [...a.pooled, ...b.pooled],
  opened: union(a.opened, b.opened),
  decisions: union(a.decisions, b.decisions),
  notBefore: later(a.notBefore, b.notBefore),
})

/** What a plan asks that another does not ask already. */
export const beyond = (always: Plan, plan: Plan): Plan => ({
  attempts: new Map([...plan.attempts].filter(([pair, count]) => count > (always.attempts.get(pair) ?? 0))),
  pooled: plan.pooled.filter((wanted) => !brings(always, wanted)),
  opened: new Set([...plan.opened].filter((pair) => !always.opened.has(pair))),
  decisions: new Set([...plan.decisions].filter((what) => !always.decisions.has(what))),
  notBefore:
    (plan.notBefore ?? Number.NEGATIVE_INFINITY) > (always.notBefore ?? Number.NEGATIVE_INFINITY)
      ? plan.notBefore
      : null,
})

const shared = <Item>(a: ReadonlySet<Item>, b: ReadonlySet<Item>): ReadonlySet<Item> =>
  new Set([...a].filter((item) => b.has(item)))

/** What both plans ask. */
export const common = (a: Plan, b: Plan): Plan => ({
  attempts: new Map(
    [...a.attempts].flatMap(([pair, count]) => {
      const other = b.attempts.get(pair)
      return other === undefined ? [] : [[pair, Math.min(count, other)] as const]
    }),
  ),
  pooled: a.pooled.filter((wanted) => b.pooled.includes(wanted)),
  opened: shared(a.opened, b.opened),
  decisions: shared(a.decisions, b.decisions),
  notBefore: a.notBefore === null || b.notBefore === null ? null : Math.min(a.notBefore, b.notBefore),
})

const within = <Item>(a: ReadonlySet<Item>, b: ReadonlySet<Item>): boolean =>
  a.size <= b.size && [...a].every((item) => b.has(item))

/** True when whatever satisfies `plan` brings the pooled attempts as well. */
const brings = (plan: Plan, wanted: Pooled): boolean =>
  wanted.pairs.reduce((sum, pair) => sum + (plan.attempts.get(pair) ?? 0), 0) >= wanted.count ||
  plan.pooled.some((other) => wanted.count <= other.count && other.pairs.every((pair) => wanted.pairs.includes(pair)))

/** True when `a` wants nothing that `b` does not want as well, whatever either is carried out together with. */
const coveredBy = (a: Plan, b: Plan): boolean =>
  (a.notBefore ?? Number.NEGATIVE_INFINITY) <= (b.notBefore ?? Number.NEGATIVE_INFINITY) &&
  within(a.decisions, b.decisions) &&
  [...a.attempts].every(([pair, count]) => count <= (b.attempts.get(pair) ?? 0)) &&
  a.pooled.every((wanted) => brings(b, wanted))

/** The plans that no other one makes needless, in the order given. */
export function withoutNeedless(plans: readonly Plan[]): Plan[] {
  const kept: Plan[] = []
  for (const plan of plans) {
    if (kept.some((other) => coveredBy(other, plan))) continue
    const still = kept.filter((other) => !coveredBy(plan, other))
    kept.splice(0, kept.length, ...still, plan)
  }
  return kept
}

const key = (missing: readonly number[]): string => missing.join()

/**
 * The fewest good attempts that carry out a plan, by pair: its own, and where the pooled ones are best dived. Exact,
 * by trying every pair for the next attempt once for each state of what is missing.
 */
export function attemptsByPair(plan: Plan): ReadonlyMap<PairKey, number> {
  const open = plan.pooled.map(({ pairs }) => pairs.filter((pair) => plan.opened.has(pair)))
  const start = plan.pooled.map(({ pairs, count }) =>
    Math.max(0, count - pairs.reduce((sum, pair) => sum + (plan.attempts.get(pair) ?? 0), 0)),
  )
  const best = new Map<string, readonly PairKey[]>()
  const dive = (missing: readonly number[]): readonly PairKey[] => {
    const first = missing.findIndex((count) => count > 0)
    if (first < 0) return []
    const known = best.get(key(missing))
    if (known) return known
    const ways = (open[first] ?? []).map((pair) => [
      pair,
      ...dive(
        missing.map((count, index) => (plan.pooled[index]?.pairs.includes(pair) ? Math.max(0, count - 1) : count)),
      ),
    ])
    const shortest = ways.reduce((a, b) => (b.length < a.length ? b : a), ways[0] ?? [])
    best.set(key(missing), shortest)
    return shortest
  }
  const byPair = new Map([...plan.attempts].filter(([, count]) => count > 0))
  for (const pair of dive(start)) byPair.set(pair, (byPair.get(pair) ?? 0) + 1)
  return byPair
}
