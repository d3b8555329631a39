import { isCurrentAt } from '../../lib/assessment/holding-state'
import { layOffAt } from '../../lib/assessment/lay-off'
import { openState } from '../../lib/assessment/open'
import { findPrerequisite } from '../../lib/assessment/readiness/evaluate'
import type { Evaluation } from '../../lib/assessment/readiness/evaluation'
import { remainingOf } from '../../lib/assessment/readiness/remaining'
import { levelTarget, targetHold } from '../../lib/assessment/target-hold'
import { type EpochDay, parseDay } from '../../lib/assessment/time'
import type { Curriculum, Pair, PairKey } from '../../lib/curriculum/edition/curriculum'
import type { Rating } from '../../lib/curriculum/model'
import type { Chance } from './chance'
import { type Route, routeTo, type Step } from './route'
import type { Story } from './stories/story'

/** One go at a skill: some dives of it, called or not, judged against a level. */
export interface Turn {
  readonly pair: Pair
  readonly level: string
  readonly called: boolean
  /** One entry a dive: what is seen of it for certain. */
  readonly dives: readonly Readonly<Record<string, Rating>>[]
  readonly note: string | null
}

/** A diver in the course of the season: the story, and what was dived so far. */
export interface DiverInSeason {
  readonly story: Story
  readonly id: string
  readonly practised: Map<PairKey, number>
  readonly lastDived: Map<PairKey, EpochDay>
  /** Her way through the curriculum, once it has been looked at. */
  route: Route | null
}

export const startOf = (story: Story, id: string): DiverInSeason => ({
  story,
  id,
  practised: new Map(),
  lastDived: new Map(),
  route: null,
})

/** A number of the diver's own, for what is a matter of taste. */
export const tasteOf = ({ key, taste }: Story): number =>
  taste ?? [...key].reduce((sum, letter) => sum + letter.charCodeAt(0), 0)

/** The diver's way to her level. */
function stepsOf(diver: DiverInSeason, curriculum: Curriculum): readonly Step[] {
  const { until, leavesOut } = diver.story
  diver.route ??= routeTo(curriculum, until, tasteOf(diver.story), leavesOut)
  return diver.route.steps
}

const usual = (count: number): Turn['dives'] => Array.from({ length: count }, () => ({}))

/** Index of the level that the diver works towards: the lowest that is not hers yet. */
function levelTowards({ curriculum, record }: Evaluation): number {
  const next = curriculum.levels.findIndex((level) => {
    const { kind } = targetHold(curriculum, record, levelTarget(level.key))
    return kind !== 'approved' && kind !== 'recognised'
  })
  return next < 0 ? curriculum.levels.length - 1 : next
}

const canBeDived = (evaluation: Evaluation, key: PairKey): boolean => {
  const { state } = openState(evaluation, key)
  return state === 'open' || state === 'held'
}

/** What was ever signed or recognised, in the curriculum's order: that of the rows is not the same twice. */
const heldPairs = ({ curriculum, holdings }: Evaluation): PairKey[] =>
  [...curriculum.pairs.keys()].filter((key) => holdings.of(key).state !== 'none')

/** Pairs that have to be put right first: re-entry after a lay-off, then what is in doubt by itself. */
function toMend(evaluation: Evaluation): PairKey[] {
  const reentry = evaluation.curriculum.layOff.flatMap(({ place }) => layOffAt(evaluation, place)?.reentry ?? [])
  const doubted = heldPairs(evaluation).filter((key) => {
    const { state: held, by } = evaluation.holdings.of(key)
    return held === 'in doubt' && by?.doubts.some((doubt) => doubt.kind !== 'below')
  })
  return [...new Set([...reentry, ...doubted])]
}

/** What was recognised and nobody here has seen yet, dives first. */
function toShow(evaluation: Evaluation): PairKey[] {
  const { curriculum, holdings } = evaluation
  const isDive = (key: PairKey): boolean => curriculum.pairs.get(key)?.skill.dive != null
  const unseen = heldPairs(evaluation).filter((key) => holdings.of(key).state === 'recognised')
  return [...unseen.filter(isDive), ...unseen.filter((key) => !isDive(key))]
}

const staleAfter = 100

/** The held dive that was not dived for longest, and for how many days. */
function toKeep(diver: DiverInSeason, evaluation: Evaluation): { readonly key: PairKey; readonly days: number } | null {
  const days = (key: PairKey) => evaluation.date.day - (diver.lastDived.get(key) ?? 0)
  const [longest] = heldPairs(evaluation)
    .filter((key) => {
      const pair = evaluation.curriculum.pairs.get(key)
      return pair?.skill.dive && evaluation.holdings.of(key).state === 'current'
    })
    .sort((a, b) => days(b) - days(a))
  return longest ? { key: longest, days: days(longest) } : null
}

function callOf(pair: Pair, chance: Chance): Turn['dives'] {
  const { of } = pair.standard
  return usual(of >= 5 ? (chance.happens(0.4) ? 5 : 3) : of)
}

/** What was told of a day, in place of the usual. */
function toldOf(diver: DiverInSeason, { date }: Evaluation, turn: (key: PairKey) => Turn): Turn[] {
  return (diver.story.episodes ?? [])
    .filter((episode) => parseDay(episode.on) === date.day)
    .map(({ pair, dives, called, note }) => ({
      ...turn(pair),
      dives,
      called,
      note: note ?? null,
    }))
}

/** What a step wants now: itself, or first what it rests on that is not there, or there no more. */
function workFor({ pair, level }: Step, evaluation: Evaluation): Step[] {
  const before = findPrerequisite(evaluation, pair.key)
  if (!before || before.status === 'met') return [{ pair, level }]
  const left = remainingOf(evaluation, before.node, 'training')
  if (left.kind === 'never') return []
  return Object.keys(left.byPair).flatMap((key) => {
    const missing = evaluation.curriculum.pairs.get(key as PairKey)
    return missing ? [{ pair: missing, level: missing.level }] : []
  })
}

/** The first steps of the way that are not hers yet and can be dived. */
function nextSteps(diver: DiverInSeason, evaluation: Evaluation, count: number): Step[] {
  const found = new Map<PairKey, Step>()
  for (const step of stepsOf(diver, evaluation.curriculum)) {
    if (found.size >= count) break
    if (isCurrentAt(evaluation.holdings.of(step.pair.key), step.level)) continue
    for (const work of workFor(step, evaluation))
      if (found.size < count && canBeDived(evaluation, work.pair.key)) found.set(work.pair.key, work)
  }
  return [...found.values()]
}

/** What a diver does in one session: what the coach and she would choose from how everything stands that day. */
export function chooseTurns(diver: DiverInSeason, evaluation: Evaluation, chance: Chance): Turn[] {
  const { curriculum } = evaluation
  const towards = levelTowards(evaluation)
  const turnAt = (key: PairKey, at: number, dives: (pair: Pair) => Turn['dives'], called = true): Turn => {
    const pair = curriculum.pairs.get(key)
    if (!pair) throw new Error(`the demo dives ${key}, which the curriculum does not have`)
    const level = curriculum.levels[Math.max(at, pair.level)]?.key ?? ''
    return { pair, level, called, dives: dives(pair), note: null }
  }
  const call = (key: PairKey, level = towards) => turnAt(key, level, (pair) => callOf(pair, chance))
  const told = toldOf(diver, evaluation, (key) => call(key))
  if (told.length > 0) return told
  const mend = [...toMend(evaluation), ...toShow(evaluation)]
    .filter((key) => canBeDived(evaluation, key))
    .slice(0, 2)
    .map((key) => call(key))
  const many = chance.happens(0.45) ? 2 : 1
  const next = nextSteps(diver, evaluation, many).flatMap(({ pair, level }) => {
    const at = Math.max(level, towards)
    const tries = turnAt(pair.key, at, () => usual(2), false)
    // A new dive is tried before it is called.
    return pair.skill.dive && (diver.practised.get(pair.key) ?? 0) < 3
      ? [tries, call(pair.key, at)]
      : [call(pair.key, at)]
  })
  const keep = toKeep(diver, evaluation)
  const isWanted = keep !== null && (keep.days > staleAfter || mend.length + next.length === 0 || chance.happens(0.2))
  return [...mend, ...next, ...(isWanted ? [turnAt(keep.key, towards, () => usual(3), chance.happens(0.75))] : [])]
}
