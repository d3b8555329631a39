import { isCurrentAt } from '../../lib/assessment/holding-state'
import { type OpenState, openState } from '../../lib/assessment/open'
import type { Evaluation } from '../../lib/assessment/readiness/evaluation'
import { levelTarget, targetHold } from '../../lib/assessment/target-hold'
import { type EpochDay, parseDay } from '../../lib/assessment/time'
import type { Pair, PairKey } from '../../lib/curriculum/edition/curriculum'
import type { Rating } from '../../lib/curriculum/model'
import type { Chance } from './chance'
import { type StageKey, stages } from './pathway'
import { isCamp } from './season'
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
}

/** A pair that a stage wants, at the level at which it wants it. */
interface Wanted {
  readonly pair: Pair
  readonly level: number
}

const usual = (count: number): Turn['dives'] => Array.from({ length: count }, () => ({}))

function wantedOf(diver: DiverInSeason, { curriculum, date }: Evaluation): Wanted[] {
  const reached = diver.story.reaches.flatMap(([from, ...keys]): StageKey[] => (parseDay(from) <= date.day ? keys : []))
  return reached.flatMap((key) =>
    stages[key].pairs
      .filter((pair) => !diver.story.leavesOut?.includes(pair))
      .map((name) => {
        const pair = curriculum.pairs.get(name)
        if (!pair) throw new Error(`the pathway of the demo names ${name}, which the curriculum does not have`)
        return { pair, level: curriculum.levelIndex(stages[key].level) }
      }),
  )
}

/** Index of the level that the diver works towards: the lowest that is not hers yet. */
function levelTowards({ curriculum, record }: Evaluation): number {
  const next = curriculum.levels.findIndex(
    (level) => targetHold(curriculum, record, levelTarget(level.key)).kind !== 'approved',
  )
  return next < 0 ? curriculum.levels.length - 1 : next
}

/** Pairs that have to be put right first: re-entry after a lay-off, then what is in doubt by itself or has lapsed. */
function toMend(evaluation: Evaluation, wanted: readonly Wanted[], state: (key: PairKey) => OpenState): PairKey[] {
  const reentry = wanted.flatMap(({ pair }) => {
    const { because } = state(pair.key)
    return because && 'kind' in because && because.kind === 'lay-off' ? because.reentry : []
  })
  const fallen = evaluation.holdings.pairs.filter((key) => {
    const { state: held, by } = evaluation.holdings.of(key)
    return held === 'lapsed' || (held === 'in doubt' && by?.doubts.some((doubt) => doubt.kind !== 'below'))
  })
  return [...new Set([...reentry, ...fallen])].filter((key) => canBeDived(state(key)))
}

const canBeDived = ({ state }: OpenState): boolean => state === 'open' || state === 'held'

/** How pairs stand, each worked out when it is first asked. */
function statesOf(evaluation: Evaluation): (key: PairKey) => OpenState {
  const known = new Map<PairKey, OpenState>()
  return (key) => {
    const state = known.get(key) ?? openState(evaluation, key)
    known.set(key, state)
    return state
  }
}

/** The held dive that was not dived for longest. */
function toKeep(diver: DiverInSeason, evaluation: Evaluation): PairKey | undefined {
  const held = evaluation.holdings.pairs.filter(
    (key) => evaluation.holdings.of(key).state === 'current' && evaluation.curriculum.pairs.get(key)?.skill.dive,
  )
  return held.sort((a, b) => (diver.lastDived.get(a) ?? 0) - (diver.lastDived.get(b) ?? 0))[0]
}

function callOf(pair: Pair, chance: Chance): Turn['dives'] {
  const { of } = pair.standard
  return usual(of >= 5 ? (chance.happens(0.3) ? 5 : 3) : of)
}

/** What a diver does in one session: what the coach and she would choose from how everything stands that day. */
export function chooseTurns(diver: DiverInSeason, evaluation: Evaluation, chance: Chance): Turn[] {
  const { curriculum, date } = evaluation
  const towards = levelTowards(evaluation)
  const state = statesOf(evaluation)
  const wanted = wantedOf(diver, evaluation)
  const asTurn = (pair: Pair, level: number, dives: Turn['dives'], called = true): Turn => ({
    pair,
    level: curriculum.levels[Math.max(level, pair.level)]?.key ?? '',
    called,
    dives,
    note: null,
  })
  const turnAt = (key: PairKey, dives: (pair: Pair) => Turn['dives'], called = true): Turn[] => {
    const pair = curriculum.pairs.get(key)
    return pair ? [asTurn(pair, towards, dives(pair), called)] : []
  }
  const told = (diver.story.episodes ?? [])
    .filter((episode) => parseDay(episode.on) === date.day)
    .flatMap((episode) =>
      turnAt(episode.pair, () => episode.dives, episode.called).map((turn) => ({
        ...turn,
        note: episode.note ?? null,
      })),
    )
  if (told.length > 0) return told
  const mend = toMend(evaluation, wanted, state)
    .slice(0, 2)
    .flatMap((key) => turnAt(key, (pair) => callOf(pair, chance)))
  const fresh = wanted.filter(
    ({ pair, level }) => !isCurrentAt(evaluation.holdings.of(pair.key), level) && canBeDived(state(pair.key)),
  )
  const many = isCamp(date.day) ? 3 : chance.happens(0.35) ? 2 : 1
  const next = fresh.slice(0, Math.max(0, many - mend.length)).flatMap(({ pair, level }) => {
    const tries = asTurn(pair, Math.max(level, towards), usual(2), false)
    const call = asTurn(pair, Math.max(level, towards), callOf(pair, chance))
    const practised = diver.practised.get(pair.key) ?? 0
    // A new dive is tried before it is called.
    return pair.skill.dive && practised < 3 ? [tries, call] : [call]
  })
  const keeps = next.length + mend.length === 0 || chance.happens(0.25) ? toKeep(diver, evaluation) : undefined
  return [...mend, ...next, ...(keeps ? turnAt(keeps, () => usual(3), chance.happens(0.75)) : [])]
}
