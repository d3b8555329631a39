import type { PairKey } from '../curriculum/edition/curriculum'
import { overWater, placeFacts } from '../curriculum/place'
import type { HoldingState } from './holding-state'
import type { Evaluation } from './readiness/evaluation'
import type { Block } from './readiness/finding'
import { closesKinds } from './stand-down'

type StandDown = Extract<Block, { kind: 'stand-down' }>
type Pause = Extract<Block, { kind: 'pause' }>

const widest = ({ closes: a }: StandDown, { closes: b }: StandDown): number =>
  closesKinds.indexOf(a) - closesKinds.indexOf(b)

/**
 * Stand-downs in force on the date, both days inclusive, what closes most first. A knock to the head that no head coach has cleared stands the
 * diver down from the water, whether or not somebody also wrote a stand-down.
 */
export function standDownsOn({ record, date }: Evaluation): StandDown[] {
  const written = record.standDowns
    .filter(({ from, until }) => from <= date.day && (until === null || date.day <= until))
    .map(({ closes, until }): StandDown => ({ kind: 'stand-down', closes, until }))
  const knocks = record.incidents
    .filter(({ kind, clearedAt }) => kind === 'knock to the head' && clearedAt === null)
    .map(({ id }) => id)
  if (knocks.length > 0) written.push({ kind: 'stand-down', closes: 'water', until: null, knocks })
  return written.sort(widest)
}

/** Whether a stand-down closes a pair: nothing new closes whatever is not held now. */
export function closesPair(
  { closes }: StandDown,
  pair: PairKey,
  holding: HoldingState,
  evaluation: Evaluation,
): boolean {
  const place = evaluation.curriculum.pairs.get(pair)?.holding.place
  if (!place) return true
  if (closes === 'new') return holding.state !== 'current' && holding.state !== 'recognised'
  return closes === 'water' ? overWater(place) : placeFacts[place].board
}

/** The pauses on any of the pairs or on what they rest on: incidents that no head coach has cleared. */
export function pausesOn({ record, holdings }: Evaluation, pairs: Iterable<PairKey>): Pause[] {
  const open = record.incidents.filter(({ clearedAt }) => clearedAt === null)
  if (open.length === 0) return []
  const reached = new Set([...pairs].flatMap((pair) => [pair, ...holdings.restsOn(pair).keys()]))
  return open
    .filter(({ pair }) => reached.has(pair))
    .map(({ pair, id, kind: what }): Pause => ({ kind: 'pause', pair, incident: id, what }))
}
