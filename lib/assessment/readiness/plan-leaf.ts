import { type Pair, type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { CriterionLeaf, SignOffLeaf } from '../../curriculum/requirement/model'
import { withAttempts } from '../history'
import { isClosed, signable } from '../open'
import { askedLevel } from '../rests-on'
import { standardOf } from '../standard'
import { find } from './evaluate'
import { type Context, type Evaluation, imagine } from './evaluation'
import { goodAttempts, imaginedSignOff } from './good-attempts'
import { nothingToDo, type Plan } from './plan'

/** So many good attempts fill every window that a standard looks at; one more changes nothing. */
function mostAttempts({ standard }: Pair): number {
  const { of, coaches, days, moments, clean, certainty, recheck } = standard
  return Math.max(of, coaches, days, moments, clean, certainty?.over ?? 0, recheck.of)
}

/**
 * What `enough` answers of the smallest number from `least` to `most` that is enough; null when none is. Good attempts never
 * make anything worse (tests/engine/laws.test.ts), so that the interval can be halved.
 */
function fewest<Answer>(least: number, most: number, enough: (attempts: number) => Answer | null): Answer | null {
  let found = enough(most)
  if (found === null) return null
  let [from, to] = [least, most]
  while (from < to) {
    const middle = Math.floor((from + to) / 2)
    const answer = enough(middle)
    if (answer === null) from = middle + 1
    else {
      found = answer
      to = middle
    }
  }
  return found
}

/** What it takes for a pair's leaf by itself, what it rests on apart. */
export interface LeafWork {
  readonly attempts: number
  readonly sign: boolean
}

// The same leaf stands under many others: what it takes is worked out once for each evaluation.
const worked = new WeakMap<Evaluation, Map<string, LeafWork | null>>()

/** The fewest good attempts, and whether a signature besides, that make a sign-off leaf met; null when neither helps. */
export function signOffWork(leaf: SignOffLeaf, evaluation: Evaluation, context: Context): LeafWork | null {
  const level = askedLevel(evaluation.curriculum, leaf)
  const known = worked.get(evaluation) ?? new Map<string, LeafWork | null>()
  worked.set(evaluation, known)
  const name = `${context} ${pairKey(leaf)} ${level}`
  const before = known.get(name)
  if (before !== undefined) return before
  const work = workOut(leaf, level, evaluation, context)
  known.set(name, work)
  return work
}

function workOut(leaf: SignOffLeaf, level: number, evaluation: Evaluation, context: Context): LeafWork | null {
  const { curriculum, holdings } = evaluation
  const pair = curriculum.pairs.get(pairKey(leaf))
  const levelKey = curriculum.levels[level]?.key
  if (!pair || levelKey === undefined) return null
  // What nobody ever signed needs the standard and a signature; what was signed once may need less.
  const attempts = holdings.of(pair.key).all.length === 0 ? attemptsToStandard(evaluation, pair, level) : null
  if (attempts !== null) return { attempts, sign: true }
  return signedWork(leaf, evaluation, context, pair, levelKey)
}

/** The fewest good attempts with which the full standard holds; null when no number of them reaches it. */
function attemptsToStandard({ history, date }: Evaluation, pair: Pair, level: number): number | null {
  const now = history(pair.key)
  if (!now) return null
  return fewest(0, mostAttempts(pair), (attempts) =>
    standardOf(withAttempts(now, goodAttempts(pair, attempts, date)), level).holds ? attempts : null,
  )
}

/** As `signOffWork` for a pair with a past: lapsed, in doubt, revoked or recognised. The engine itself is asked each time. */
function signedWork(
  leaf: SignOffLeaf,
  evaluation: Evaluation,
  context: Context,
  pair: Pair,
  levelKey: string,
): LeafWork | null {
  const { date } = evaluation
  const level = evaluation.curriculum.levelIndex(levelKey)
  const after = (attempts: number): LeafWork | null => {
    const more = { pair: pair.key, attempts: goodAttempts(pair, attempts, date), signOffs: [] }
    const trained = imagine(evaluation, more)
    if (find(trained, leaf, context).status === 'met') return { attempts, sign: false }
    if (!canBeSigned(trained, pair.key, level)) return null
    const signed = imagine(evaluation, { ...more, signOffs: [imaginedSignOff(pair.key, levelKey, date)] })
    return find(signed, leaf, context).status === 'met' ? { attempts, sign: true } : null
  }
  return fewest(0, mostAttempts(pair), after)
}

/** Whether the pair can be signed at the level, were what it rests on there. */
function canBeSigned(evaluation: Evaluation, key: PairKey, level: number): boolean {
  const now = signable(evaluation, key)
  if (now && evaluation.curriculum.levelIndex(now.level) >= level) return true
  const history = evaluation.history(key)
  return history !== undefined && standardOf(history, level).holds
}

/** The plan of a criterion leaf: good attempts at any of its pairs; `opened` are those that can be dived now. */
export function criterionPlan(
  leaf: CriterionLeaf,
  evaluation: Evaluation,
  context: Context,
): { plan: Plan; exact: boolean } | null {
  const { curriculum, date } = evaluation
  const counts = leaf.at.flatMap((holding) => {
    const pair = curriculum.pairs.get(pairKey(holding))
    if (!pair) return []
    const found = fewest(1, Math.max(leaf.of, mostAttempts(pair)), (count) => {
      const more = { pair: pair.key, attempts: goodAttempts(pair, count, date), signOffs: [] }
      return find(imagine(evaluation, more), leaf, context).status === 'met' ? { pair: pair.key, count } : null
    })
    return found ?? []
  })
  const least = Math.min(...counts.map(({ count }) => count))
  const pairs = counts.filter(({ count }) => count === least).map(({ pair }) => pair)
  if (pairs.length === 0) return null
  const opened = new Set(pairs.filter((pair) => !isClosed(evaluation, pair)))
  return {
    plan: { ...nothingToDo, pooled: [{ pairs, count: least }], opened },
    exact: counts.every(({ count }) => count === least),
  }
}
