import type { PairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { Requirement, VenueFeature } from '../../curriculum/requirement/model'
import type { DiveListAnswer } from '../dive-list/answer'
import type { IncidentKind, TargetKey } from '../record'
import type { Doubt, Shortage, StandingShortfall } from '../shortfall'
import type { EpochDay } from '../time'

/** From best to worst; `rank` in evaluate.ts orders them 3…0. */
export const statuses = ['met', 'lapsed', 'unproven', 'unmet'] as const
export type Status = (typeof statuses)[number]

/** Why a node has its status: a closed union; sentences are made in say-reason.ts and nowhere else. */
export type Reason =
  | { readonly code: 'branch'; readonly met: number; readonly wanted: number; readonly outOf: number }
  // signOff
  | {
      readonly code: 'signed'
      readonly level: string
      readonly day: EpochDay
      readonly validUntil: EpochDay | null
      readonly byOverride: boolean
      readonly recognised: boolean
    }
  | { readonly code: 'lapsed'; readonly day: EpochDay; readonly renewBy: EpochDay }
  | { readonly code: 'in doubt'; readonly doubt: Doubt }
  | { readonly code: 'recognised, not shown'; readonly day: EpochDay; readonly lapses: EpochDay }
  | { readonly code: 'to sign'; readonly level: string }
  | { readonly code: 'waits for what it rests on'; readonly level: string }
  | {
      readonly code: 'not enough'
      readonly level: string
      readonly shortage: Shortage
      readonly signedAt: string | null
    }
  | { readonly code: 'failing'; readonly level: string; readonly failed: number; readonly of: number }
  | { readonly code: 'standing shortfall'; readonly level: string; readonly shortfall: StandingShortfall }
  // criterion
  | {
      readonly code: 'rated'
      readonly criterion: string
      readonly reached: number
      readonly times: number
      readonly of: number
    }
  | {
      readonly code: 'rated too seldom'
      readonly criterion: string
      readonly reached: number
      readonly times: number
      readonly of: number
    }
  | {
      readonly code: 'fell short'
      readonly criterion: string
      readonly fell: number
      readonly of: number
      readonly rating: Rating
    }
  | { readonly code: 'criterion shortfall'; readonly criterion: string; readonly shortfall: StandingShortfall }
  // level, boardMove
  | {
      readonly code: 'approved'
      readonly target: TargetKey
      readonly day: EpochDay
      readonly byOverride: boolean
      readonly recognised: boolean
    }
  | { readonly code: 'to review'; readonly target: TargetKey; readonly day: EpochDay }
  | { readonly code: 'not approved'; readonly target: TargetKey }
  | { readonly code: 'recognised, not shown here'; readonly target: TargetKey }
  | { readonly code: 'withdrawn'; readonly target: TargetKey; readonly day: EpochDay }
  // age
  | { readonly code: 'of age'; readonly age: number }
  | { readonly code: 'age waived'; readonly age: number | null }
  | { readonly code: 'no birth date' }
  | { readonly code: 'too young'; readonly age: number; readonly min: number; readonly from: EpochDay }
  | { readonly code: 'too old'; readonly age: number; readonly max: number }
  // diveList
  | { readonly code: 'legal list'; readonly event: string; readonly answer: Extract<DiveListAnswer, { legal: 'now' }> }
  | {
      readonly code: 'list to renew'
      readonly event: string
      readonly answer: Extract<DiveListAnswer, { legal: 'once renewed' }>
    }
  | {
      readonly code: 'no legal list'
      readonly event: string
      readonly answer: Extract<DiveListAnswer, { legal: 'no' }>
    }
  // venue
  | { readonly code: 'venue has it'; readonly feature: VenueFeature }
  | { readonly code: 'venue unknown'; readonly feature: VenueFeature }
  | { readonly code: 'venue lacks it'; readonly feature: VenueFeature }
  // any leaf that names what the edition does not have (a draft's mistake; never met)
  | { readonly code: 'not in this edition'; readonly what: string }

/** The answer to a requirement: a tree of the same shape, never a bare yes or no. */
export interface Finding {
  readonly node: Requirement
  readonly status: Status
  readonly reason: Reason
  /** Ids of attempts, sign-offs, decisions or recognitions that it rests on. */
  readonly evidence: readonly string[]
  readonly children: readonly Finding[]
  /** Indexes into `children`: what to follow in an explanation. Of a met node, those it rests on. */
  readonly binding: readonly number[]
}

/** What stands against an advancement or an open skill whatever the numbers say; never waived. */
export type Block =
  | {
      readonly kind: 'stand-down'
      readonly closes: 'water' | 'boards' | 'new'
      readonly until: EpochDay | null
      /** The knocks to the head that it comes from, by incident; absent where somebody wrote it. */
      readonly knocks?: readonly string[]
    }
  | { readonly kind: 'pause'; readonly pair: PairKey; readonly incident: string; readonly what: IncidentKind }
  | { readonly kind: 'lay-off'; readonly place: string; readonly since: EpochDay; readonly reentry: readonly PairKey[] }
  | { readonly kind: 'returned'; readonly day: EpochDay; readonly wantsMoreOf: readonly PairKey[] }

/** A level or a board move put against a diver's record: `ready` means approvable now. */
export interface TargetFinding {
  readonly target: TargetKey
  readonly finding: Finding
  readonly blocks: readonly Block[]
  readonly held: 'no' | 'approved' | 'recognised' | 'to review'
  readonly ready: boolean
}

/** The least that would make a finding met. */
export type Remaining =
  | {
      readonly kind: 'count'
      /** Further good called attempts. */
      readonly attempts: number
      /** Sign-offs and head-coach decisions still to be made; missing facts (birth date, venue) count here. */
      readonly decisions: number
      /** Pairs that are not held and not yet begun (no attempt). */
      readonly newSkills: readonly PairKey[]
      /** Good attempts wanted by pair. */
      readonly byPair: Readonly<Record<PairKey, number>>
      /** The earliest day on which it can be met (age); null when nothing waits. */
      readonly notBefore: EpochDay | null
      /** False where the search was cut short and the number is an upper bound. */
      readonly exact: boolean
    }
  | {
      readonly kind: 'never'
      /** Leaves that stand in the way, with their reasons. */
      readonly because: readonly Finding[]
    }

/** One of the one or two criteria most worth coaching now. */
export interface Focus {
  readonly criterion: string
  readonly pair: PairKey
  readonly level: string
  /** Lower median of the recent explicit ratings, and what is expected. */
  readonly rating: Rating
  readonly expected: Rating
  /** Targets near to met that it binds. */
  readonly binds: readonly TargetKey[]
  readonly day: EpochDay
  readonly fault: string | null
}
