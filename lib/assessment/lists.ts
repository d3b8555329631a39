import type { PairKey } from '../curriculum/edition/curriculum'
import { type DoubtLink, doubtChain } from './doubt-chain'
import { bestOf, type HoldingState, type SignedState } from './holding-state'
import { type Signable, signable } from './open'
import { type Raise, raisedIn } from './raise'
import type { Evaluation } from './readiness/evaluation'
import { doubtToSay } from './readiness/leaf-sign-off'
import type { AttemptFact, IncidentFact, ObservationFact, TargetKey } from './record'
import type { EpochDay } from './time'

/** The head coach's lists, in the order in which they are worked through: what is dangerous first. */
export const listNames = [
  'incidents',
  'in doubt',
  'raised',
  'ready',
  'flagged',
  'not rated',
  'lapsing',
  'to review',
] as const
export type ListName = (typeof listNames)[number]

/** Days before a lapse from which a sign-off is listed. */
export const lapseWarningDays = 14

/** A call, with the numbers in it that were dived. It stands beside the record: no rule of evidence asks for it. */
export interface CallFact {
  readonly id: string
  readonly pair: PairKey
  readonly coach: string
  /** Day of the call in the club's zone. */
  readonly day: EpochDay
  readonly count: number
  /** Numbers from 1 to `count` of which an attempt was kept. */
  readonly dived: readonly number[]
}

/** One line of one list, with what its sentence and its actions need. */
export type Entry =
  | { readonly list: 'incidents'; readonly incident: IncidentFact }
  | {
      readonly list: 'in doubt'
      readonly pair: PairKey
      readonly signed: SignedState
      readonly chain: readonly DoubtLink[]
    }
  | {
      readonly list: 'raised'
      readonly attempt: AttemptFact
      readonly view: ObservationFact
      readonly raises: readonly Raise[]
    }
  | { readonly list: 'ready'; readonly target: TargetKey; readonly since: EpochDay }
  | { readonly list: 'flagged'; readonly attempt: AttemptFact; readonly why: 'closed' | 'future' }
  | { readonly list: 'not rated'; readonly call: CallFact; readonly missing: number }
  | {
      readonly list: 'lapsing'
      readonly pair: PairKey
      readonly signed: SignedState
      readonly renewal: Signable | null
    }
  | { readonly list: 'to review'; readonly target: TargetKey }

/** Which targets the readiness rows name: `since` of a ready one, null of one to review. */
export interface ListedTarget {
  readonly target: TargetKey
  readonly since: EpochDay | null
}

const covers = (other: SignedState, one: SignedState): boolean => other !== one && other.level >= one.level

/** The signature in doubt at a pair that nothing current covers; of several the highest, then the newest. */
function doubted({ all }: HoldingState): SignedState | undefined {
  const current = all.filter(({ state }) => state === 'current')
  return bestOf(all.filter((one) => one.state === 'in doubt' && !current.some((other) => covers(other, one))))
}

/** Where a signature stands towards its lapse: within the days before it, or within the days of grace after it. */
export function lapseOf({ state, validUntil, renewBy }: SignedState, today: EpochDay): 'soon' | 'lapsed' | null {
  if (state === 'current') return validUntil - today <= lapseWarningDays ? 'soon' : null
  return state === 'lapsed' && today <= renewBy ? 'lapsed' : null
}

/** The signature at a pair that is about to lapse or lapsed lately, unless another at its level lasts. */
function lapsing({ all }: HoldingState, today: EpochDay): SignedState | undefined {
  const lasting = all.filter(
    (one) => one.state === 'in doubt' || (one.state === 'current' && lapseOf(one, today) === null),
  )
  return bestOf(all.filter((one) => lapseOf(one, today) !== null && !lasting.some((other) => covers(other, one))))
}

function holdingEntries(evaluation: Evaluation): Entry[] {
  return evaluation.holdings.pairs.flatMap((pair): Entry[] => {
    if (!evaluation.curriculum.pairs.has(pair)) return []
    const holding = evaluation.holdings.of(pair)
    const doubt = doubted(holding)
    const lapse = lapsing(holding, evaluation.date.day)
    const first = doubt && doubtToSay(doubt.doubts)
    return [
      ...(doubt && first
        ? [{ list: 'in doubt', pair, signed: doubt, chain: doubtChain(evaluation, pair, first) } as const]
        : []),
      ...(lapse ? [{ list: 'lapsing', pair, signed: lapse, renewal: signable(evaluation, pair) } as const] : []),
    ]
  })
}

function attemptEntries({ curriculum, record, date }: Evaluation): Entry[] {
  return record.attempts.flatMap((attempt): Entry[] => {
    const pair = curriculum.pairs.get(attempt.pair)
    const closed = attempt.closedThen && attempt.releasedAt === null
    const future = attempt.futureDated && attempt.day > date.day
    return [
      ...(closed || future ? [{ list: 'flagged', attempt, why: closed ? 'closed' : 'future' } as const] : []),
      ...(pair ? raisedIn(pair, attempt).map((found) => ({ list: 'raised', attempt, ...found }) as const) : []),
    ]
  })
}

/** A number without an attempt when the club's day has ended is called and not rated. */
function callEntries(calls: readonly CallFact[], today: EpochDay): Entry[] {
  return calls
    .map((call) => ({ list: 'not rated' as const, call, missing: call.count - new Set(call.dived).size }))
    .filter(({ call, missing }) => call.day < today && missing > 0)
}

/** The lines that one diver's record yields by itself: incidents, raises, flags, doubts, lapses. */
export function recordEntries(evaluation: Evaluation): Entry[] {
  const incidents = evaluation.record.incidents.filter(({ clearedAt }) => clearedAt === null)
  return [
    ...incidents.map((incident): Entry => ({ list: 'incidents', incident })),
    ...attemptEntries(evaluation),
    ...holdingEntries(evaluation),
  ]
}

/**
 * The lines beside the record: `calls` that nobody closed, and the targets that the readiness rows name as ready or to
 * review, so that nothing is evaluated twice.
 */
export const otherEntries = (
  calls: readonly CallFact[],
  targets: readonly ListedTarget[],
  today: EpochDay,
): Entry[] => [
  ...callEntries(calls, today),
  ...targets.map(
    ({ target, since }): Entry => (since === null ? { list: 'to review', target } : { list: 'ready', target, since }),
  ),
]
