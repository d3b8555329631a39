import { type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import { type Requirement, type RequirementReader, readRequirement } from '../../curriculum/requirement/model'
import type { TargetKey } from '../record'
import { targetOf } from '../rests-on'
import { targetRequirement } from '../target-hold'
import { find } from './evaluate'
import type { Context, Evaluation } from './evaluation'
import type { Block, Remaining } from './finding'
import { attemptsByPair, nothingToDo, type Plan } from './plan'
import { listWays } from './plan-dive-list'
import { criterionPlan, signOffWork } from './plan-leaf'
import { readTarget } from './targets'
import { attemptsOf, both, decided, done, oneWay, plansOf, some, type Ways } from './ways'

interface Asking {
  readonly evaluation: Evaluation
  readonly context: Context
  /** Requirements on the way down: a draft's circle ends there. */
  readonly within: ReadonlySet<Requirement>
}

const never = (node: Requirement, asking: Asking): Ways => ({ never: [find(asking.evaluation, node, asking.context)] })

/** What a pair rests on, in training: nothing when it is met. */
function prerequisiteWays(pair: PairKey, asking: Asking): Ways {
  const node = asking.evaluation.curriculum.pairs.get(pair)?.prerequisite
  return node ? waysOf(node, { ...asking, context: 'training' }) : done
}

function targetWays(target: TargetKey | null, node: Requirement, asking: Asking): Ways {
  const { evaluation } = asking
  const requirement = target && targetRequirement(evaluation.curriculum, target)
  if (!target || !requirement) return never(node, asking)
  const { held } = readTarget(evaluation, target)
  const own = waysOf(requirement, { ...asking, context: 'advancement' })
  return held === 'no' ? both(own, oneWay(decided(`decide ${target}`))) : own
}

const reader: RequirementReader<Ways, Asking> = {
  all: (node, asking) => node.of.map((child) => waysOf(child, asking)).reduce(both, done),
  any: (node, asking) =>
    some(
      node.of.map((child) => waysOf(child, asking)),
      1,
    ),
  atLeast: (node, asking) =>
    some(
      node.of.map((child) => waysOf(child, asking)),
      node.n,
    ),
  signOff: (leaf, asking) => {
    const key = pairKey(leaf)
    const work = signOffWork(leaf, asking.evaluation, asking.context)
    const below = prerequisiteWays(key, asking)
    if (!work) return 'never' in below || below === done ? never(leaf, asking) : below
    const plan: Plan = {
      ...nothingToDo,
      attempts: new Map([[key, work.attempts]]),
      opened: new Set([key]),
      decisions: new Set(work.sign ? [`sign ${key}`] : []),
    }
    return both(oneWay(plan), below)
  },
  criterion: (leaf, asking) => {
    const found = criterionPlan(leaf, asking.evaluation, asking.context)
    if (!found) return never(leaf, asking)
    const own = oneWay(found.plan, found.exact)
    if (found.plan.opened.size > 0) return own
    // None of its pairs can be dived yet: what one of them rests on comes first.
    const opening = leaf.at.map((at): Ways => {
      const below = prerequisiteWays(pairKey(at), asking)
      return both(below, oneWay({ ...found.plan, opened: new Set([pairKey(at)]) }, found.exact))
    })
    return some(opening, 1)
  },
  level: (leaf, asking) => targetWays(targetOf(asking.evaluation.curriculum, leaf), leaf, asking),
  boardMove: (leaf, asking) => targetWays(targetOf(asking.evaluation.curriculum, leaf), leaf, asking),
  age: (leaf, asking) => {
    const { reason } = find(asking.evaluation, leaf, asking.context)
    if (reason.code === 'too young') return oneWay({ ...nothingToDo, notBefore: reason.from })
    return reason.code === 'no birth date' ? oneWay(decided('record the birth date')) : never(leaf, asking)
  },
  diveList: (leaf, asking) => {
    const { reason } = find(asking.evaluation, leaf, asking.context)
    const event = asking.evaluation.curriculum.events.get(leaf.event)
    if (!event || reason.code === 'not in this edition') return never(leaf, asking)
    const because = reason.code === 'no legal list' ? reason.answer.because.map(({ kind }) => kind) : []
    if (because.includes('outside the band')) return never(leaf, asking)
    const list = listWays(event, asking.evaluation.curriculum, (entry) => waysOf(entry.leaf, asking))
    if (!list) return never(leaf, asking)
    return because.includes('no birth date') ? both(list, oneWay(decided('record the birth date'))) : list
  },
  venue: (leaf, asking) => {
    const { reason } = find(asking.evaluation, leaf, asking.context)
    return reason.code === 'venue unknown' ? oneWay(decided(`record the venue ${leaf.feature}`)) : never(leaf, asking)
  },
}

/** What was worked out of an evaluation, until a draft's circle was met: from there on it matters by which way one came. */
interface Known {
  readonly ways: Readonly<Record<Context, Map<Requirement, Ways>>>
  circle: boolean
}

const known = new WeakMap<Evaluation, Known>()

function knownOf(evaluation: Evaluation): Known {
  const before = known.get(evaluation)
  if (before) return before
  const made = { ways: { training: new Map(), advancement: new Map() }, circle: false }
  known.set(evaluation, made)
  return made
}

function waysOf(node: Requirement, asking: Asking): Ways {
  const { evaluation, context, within } = asking
  if (find(evaluation, node, context).status === 'met') return done
  const known = knownOf(evaluation)
  const before = known.ways[context].get(node)
  if (before) return before
  if (within.has(node)) {
    known.circle = true
    return never(node, asking)
  }
  const ways = readRequirement(reader, node, { ...asking, within: new Set([...within, node]) })
  if (!known.circle) known.ways[context].set(node, ways)
  return ways
}

/** What takes a block away: a decision of the head coach, or good attempts. */
function blockPlan(block: Block): Plan {
  switch (block.kind) {
    case 'stand-down':
      return block.knocks
        ? { ...nothingToDo, decisions: new Set(block.knocks.map((id) => `release ${id}`)) }
        : decided('end the stand-down')
    case 'pause':
      return decided(`release ${block.incident}`)
    case 'lay-off':
      return { ...nothingToDo, attempts: new Map(block.reentry.map((pair) => [pair, 1])) }
    case 'returned':
      return { ...nothingToDo, pooled: [{ pairs: block.wantsMoreOf, count: 1 }], opened: new Set(block.wantsMoreOf) }
  }
}

function toRemaining(ways: Ways, evaluation: Evaluation): Remaining {
  if ('never' in ways) return { kind: 'never', because: ways.never }
  const counted = plansOf(ways).map((plan) => ({ plan, byPair: attemptsByPair(plan), attempts: attemptsOf(plan) }))
  const [best] = counted.sort(
    (a, b) =>
      a.attempts - b.attempts ||
      a.plan.decisions.size - b.plan.decisions.size ||
      (a.plan.notBefore ?? 0) - (b.plan.notBefore ?? 0),
  )
  if (!best) return { kind: 'never', because: [] }
  const begun = (pair: PairKey): boolean =>
    (evaluation.history(pair)?.attempts.length ?? 0) > 0 || evaluation.holdings.of(pair).state !== 'none'
  return {
    kind: 'count',
    attempts: best.attempts,
    decisions: best.plan.decisions.size,
    newSkills: [...best.byPair.keys()].filter((pair) => !begun(pair)),
    byPair: Object.fromEntries(best.byPair) as Record<PairKey, number>,
    notBefore: best.plan.notBefore,
    exact: ways.exact,
  }
}

/**
 * The least number of further good called attempts, and decisions, that would make a requirement met:
 * what is not held is expanded into what it rests on, good attempts at a pair serve every leaf that wants them, and every
 * choice is weighed. `exact` is false where the search was cut short and the number is an upper bound.
 */
export const remainingOf = (evaluation: Evaluation, node: Requirement, context: Context): Remaining =>
  toRemaining(waysOf(node, { evaluation, context, within: new Set() }), evaluation)

/** `remainingOf` for a level or board move: with what blocks it, and the decision on it. Nothing remains of one that is held. */
export function remaining(evaluation: Evaluation, target: TargetKey): Remaining {
  const known = worked.get(evaluation) ?? new Map<TargetKey, Remaining>()
  worked.set(evaluation, known)
  const before = known.get(target)
  if (before) return before
  const found = workOut(evaluation, target)
  known.set(target, found)
  return found
}

// A diver's page asks for what remains more than once: the sentence, the focus, the region.
const worked = new WeakMap<Evaluation, Map<TargetKey, Remaining>>()

function workOut(evaluation: Evaluation, target: TargetKey): Remaining {
  const { held, finding, blocks } = readTarget(evaluation, target)
  if (held === 'approved') return toRemaining(done, evaluation)
  const own = waysOf(finding.node, { evaluation, context: 'advancement', within: new Set() })
  const unblocked = blocks.map((block) => oneWay(blockPlan(block))).reduce(both, own)
  const decision: Ways = held === 'no' ? oneWay(decided(`decide ${target}`)) : done
  return toRemaining(both(unblocked, decision), evaluation)
}
