import type { Family } from '../curriculum/dives/model'
import type { PairKey } from '../curriculum/edition/curriculum'
import type { Rating } from '../curriculum/model'
import type { VenueFeature } from '../curriculum/requirement/model'
import type { EpochDay, Instant } from './time'

/** Something known from an instant on; before it, as of an earlier date, it did not exist. */
interface Received {
  readonly receivedAt: Instant
}

/** One coach's view of one attempt. A superseded one is kept, with the instant from which its successor counts. */
export interface ObservationFact extends Received {
  readonly id: string
  readonly coach: string
  readonly observedOn: 'deck' | 'video'
  /** Explicit ratings by criterion key. */
  readonly ratings: Readonly<Record<string, Rating>>
  /** Lower bounds from "rest as expected", by criterion key: what `atLevel` expects in the observation's own edition. */
  readonly imputed: Readonly<Record<string, Rating>>
  /** False when the pair lay beyond the coach's scope on that day: kept, and earns nothing. */
  readonly withinScope: boolean
  /** Video moments that it was kept with. */
  readonly moments: number
  /** When a video was linked to this coach's view later; null while none was. */
  readonly linkedAt: Instant | null
  readonly faults: readonly string[]
  /** The observation it replaces; that one stops counting from this one's `receivedAt`. */
  readonly supersedes: string | null
  /** When the head coach accepted the critical ratings that it raised; null while nobody has. */
  readonly raiseAcceptedAt: Instant | null
}

/** One dive. Ordered by `attemptedAt`, ties by id. */
export interface AttemptFact extends Received {
  readonly id: string
  readonly pair: PairKey
  readonly atLevel: string
  readonly attemptedAt: Instant
  /** Calendar day of `attemptedAt` in the club's zone. */
  readonly day: EpochDay
  readonly club: string
  /** Declared before it was dived. */
  readonly called: boolean
  readonly cued: boolean
  /** The device dated it after it was received: kept, flagged, earns nothing until its date has come. */
  readonly futureDated: boolean
  /** Dived while the pair was closed to the diver: earns nothing until released. */
  readonly closedThen: boolean
  readonly releasedAt: Instant | null
  readonly observations: readonly ObservationFact[]
}

/** What a head coach waived in writing on a sign-off; `count` is the successes still asked. */
export interface SignOffWaiver {
  readonly coaches?: true
  readonly days?: true
  readonly moments?: true
  readonly certainty?: true
  readonly count?: number
}

/** A coach's signature on a pair at a level. */
export interface SignOffFact extends Received {
  readonly id: string
  readonly pair: PairKey
  readonly level: string
  readonly coach: string
  readonly signedAt: Instant
  readonly day: EpochDay
  /** By the full standard, or the lighter recheck that renews a lapsed one. */
  readonly by: 'standard' | 'recheck'
  readonly waiver: SignOffWaiver | null
  /** Attempts whose successes were cited. */
  readonly evidence: readonly string[]
  readonly revokedAt: Instant | null
}

/** What a head coach recognised from before: a holding, a level or a board move. */
export interface RecognitionFact extends Received {
  readonly id: string
  readonly what:
    | { readonly kind: 'holding'; readonly pair: PairKey; readonly level: string }
    | { readonly kind: 'level'; readonly level: string }
    | { readonly kind: 'boardMove'; readonly family: Family; readonly to: string }
  readonly by: string
  readonly recognisedAt: Instant
  readonly day: EpochDay
  readonly revokedAt: Instant | null
}

/** What is put before the head coach: `level:KEY` or `move:FAMILY:PLACE`. */
export type TargetKey = `level:${string}` | `move:${Family}:${string}`

/** A head coach's decision on a target; the newest one that is no return holds. */
export interface DecisionFact extends Received {
  readonly id: string
  readonly target: TargetKey
  readonly outcome: 'approve' | 'override' | 'return' | 'withdraw'
  readonly by: string
  readonly decidedAt: Instant
  readonly day: EpochDay
  /** On an override of a level or move, age is all that can be waived. */
  readonly waivesAge: boolean
  /** Of a return: the pairs it wants more of. It comes back on a new success there. */
  readonly wantsMoreOf: readonly PairKey[]
}

/** What can happen on a board that closes it for a diver until a head coach clears it. */
export const incidentKinds = ['contact with the board', 'too close', 'bad landing', 'knock to the head'] as const
export type IncidentKind = (typeof incidentKinds)[number]
/** What a stand-down closes: all water, the boards, or only what is new. */
export type ClosesKind = 'water' | 'boards' | 'new'

/** An incident at a pair; open while `clearedAt` is null. */
export interface IncidentFact extends Received {
  readonly id: string
  readonly pair: PairKey
  readonly kind: IncidentKind
  readonly happenedAt: Instant
  readonly clearedAt: Instant | null
}

/** A diver kept from water, boards or new dives, both days inclusive. Never the reason. */
export interface StandDownFact extends Received {
  readonly id: string
  readonly closes: ClosesKind
  readonly from: EpochDay
  /** Last day, inclusive; null while open. */
  readonly until: EpochDay | null
}

/** Whether the club has a feature, from when it was recorded. */
export interface VenueFact extends Received {
  readonly feature: VenueFeature
  readonly has: boolean
}

/** Everything that the engine knows of one diver: plain data, no clock, no zone. */
export interface DiverRecord {
  readonly diver: string
  /** Calendar birth date as a day number; null when not recorded. */
  readonly born: EpochDay | null
  /** In `attemptedAt`, then id order. */
  readonly attempts: readonly AttemptFact[]
  readonly signOffs: readonly SignOffFact[]
  readonly recognitions: readonly RecognitionFact[]
  readonly decisions: readonly DecisionFact[]
  readonly incidents: readonly IncidentFact[]
  readonly standDowns: readonly StandDownFact[]
  /** Of the diver's club; the latest received by the date counts. A feature without one is unknown. */
  readonly venue: readonly VenueFact[]
}
