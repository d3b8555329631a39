import { z } from 'zod'
import type { PairKey } from '../../curriculum/edition/curriculum'
import type { EditionDocument } from '../../curriculum/model'
import { places } from '../../curriculum/place'
import { ownFilm, type RangeProblem, rangeProblem } from '../moment'
import { type IncidentKind, incidentKinds } from '../record'
import { batchLimit, deckVersion, longestClipNumber } from './limits'

export { batchLimit, deckVersion }

const id = z.uuid({ version: 'v7', error: 'an id made on the device must be a UUID of version 7' })
const uuid = z.uuid()
const rating = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)], {
  error: 'a rating is 0, 1, 2, 3 or 4',
})
const key = z.string().min(1).max(80)
/** Milliseconds since 1970, in UTC; to the end of the year 9999, beyond which no calendar here counts. */
const instant = z
  .number()
  .int({ error: 'a time is a whole number of milliseconds' })
  .min(0, { error: 'a time before 1970 cannot be: set the clock of the device' })
  .max(253_402_300_799_999, { error: 'a time after the year 9999 cannot be: set the clock of the device' })
const pair = { skill: key, place: z.enum(places) }

const rangeErrors: Readonly<Record<RangeProblem['what'], string>> = {
  'too late':
    'a time in the moment is more than 24 hours (86,400 s) into its video: write the time that the player shows, e.g. 0:12.4',
  backwards: 'the moment ends before it begins: its end must be later than its start',
  'too short': 'the moment is shorter than a thousandth of a second: its end must be later than its start',
}

/** A time range in a linked video, seconds; `end` null plays to the end (W3C Media Fragments). */
export const momentSchema = z
  .strictObject({
    id,
    link: z
      .union([z.url({ protocol: /^https?$/ }), z.string().regex(ownFilm)], {
        error: 'a moment needs a web address that begins with http:// or https://',
      })
      .refine((link) => link.length <= 2000, { error: 'the link is longer than 2,000 characters' }),
    start: z.number().min(0, { error: 'a moment cannot begin before 0 s' }),
    end: z.number().nullable(),
  })
  .superRefine((moment, context) => {
    const problem = rangeProblem(moment)
    if (problem) context.addIssue({ code: 'custom', path: [problem.at], message: rangeErrors[problem.what] })
  })

/** Declared before the dives: these `count` dives count. */
export const callSchema = z.strictObject({
  kind: z.literal('call'),
  id,
  diver: uuid,
  ...pair,
  atLevel: key,
  count: z
    .number()
    .int()
    .min(1, { error: 'call at least one attempt' })
    .max(20, { error: 'call at most 20 attempts at once' }),
  calledAt: instant,
  device: uuid,
})

/** Filmed, to be linked later: when that was marked, and the number of the clip on the camera. */
export const filmedSchema = z.strictObject({
  clip: z
    .number()
    .int()
    .min(1, { error: 'clips are numbered from 1' })
    .max(longestClipNumber, {
      error: `a clip number is at most ${longestClipNumber}`,
    }),
  at: instant,
})

/** Appended when the dive is over. With a call: its number in it, from 1. */
export const attemptSchema = z.strictObject({
  kind: z.literal('attempt'),
  id,
  diver: uuid,
  ...pair,
  atLevel: key,
  call: z.strictObject({ id, number: z.number().int().min(1).max(20) }).nullable(),
  attemptedAt: instant,
  setting: z.enum(['training', 'test', 'meet']),
  cued: z.boolean(),
  device: uuid,
  /** Absent, never null, where nobody marked it: decks of before have no such field, and what they sent keeps its digest. */
  filmed: filmedSchema.optional(),
})

/** What one coach saw of one attempt. A correction names what it supersedes and why. */
export const observationSchema = z.strictObject({
  kind: z.literal('observation'),
  id,
  attempt: id,
  /** Hash of the edition that was on the screen. */
  edition: z.string().regex(/^[0-9a-f]{64}$/, { error: 'an edition is named by 64 hexadecimal digits' }),
  observedOn: z.enum(['deck', 'video']),
  observedAt: instant,
  ratings: z.record(key, rating),
  restAsExpected: z.boolean(),
  faults: z.array(key).max(24),
  note: z.string().max(2000).nullable(),
  moments: z.array(momentSchema).max(6),
  supersedes: z
    .strictObject({ id, reason: z.string().trim().min(3, { error: 'say in a few words why you correct it' }).max(500) })
    .nullable(),
})

/** Contact with the board and its like. Recorded at once, before the attempt is kept or on one that was. */
export const incidentSchema = z.strictObject({
  kind: z.literal('incident'),
  id,
  diver: uuid,
  ...pair,
  what: z.enum(incidentKinds),
  attempt: id.nullable(),
  note: z.string().max(2000).nullable(),
  happenedAt: instant,
  device: uuid,
})

/** One thing that the deck records. */
export const itemSchema = z.discriminatedUnion('kind', [callSchema, attemptSchema, observationSchema, incidentSchema])
export type DeckItem = z.infer<typeof itemSchema>
export type CallItem = z.infer<typeof callSchema>
export type AttemptItem = z.infer<typeof attemptSchema>
export type ObservationItem = z.infer<typeof observationSchema>
export type IncidentItem = z.infer<typeof incidentSchema>
export type MomentItem = z.infer<typeof momentSchema>
export type FilmedItem = z.infer<typeof filmedSchema>

/** The envelope; items are parsed one by one, so that a bad one does not hold back the others. */
export const batchSchema = z.strictObject({
  v: z.literal(deckVersion),
  /** Device clock when sent: the server measures the offset. */
  sentAt: instant,
  items: z
    .array(z.unknown())
    .min(1)
    .max(batchLimit.items, { error: `send at most ${batchLimit.items} items at once` }),
})
/** What the deck posts: at most 50 items, in the order in which they happened. */
export type DeckBatch = { v: typeof deckVersion; sentAt: number; items: DeckItem[] }

/** Why an item was refused. `malformed` and `field` say where; the rest is a rule. */
export const refusalCodes = [
  'malformed',
  'unknown diver',
  'unknown skill',
  'unknown level',
  'unknown edition',
  'unpublished edition',
  'unknown attempt',
  'unknown call',
  'other call',
  'criterion does not apply',
  'fault does not apply',
  'nothing rated',
  'already rated',
  'not yours to supersede',
  'already superseded',
  'same id, other content',
  'parent refused',
  'not a coach here',
  'no consent',
] as const
export type RefusalCode = (typeof refusalCodes)[number]

/** What an item was kept without, and why as a sentence: video moments by id, or the mark "filmed" where none are named. */
export interface KeptWithout {
  readonly moments: readonly string[]
  readonly message: string
}

/** What became of one item; `code`, `message` and `field` belong to a refusal. */
export interface ItemAnswer {
  readonly id: string
  readonly result: 'accepted' | 'known' | 'refused'
  /** Of an observation that is stored: what of it is not. */
  readonly keptWithout?: KeptWithout
  readonly code?: RefusalCode
  readonly message?: string
  /** Path inside the item, e.g. `ratings.entry-line`. */
  readonly field?: string
}

/** How a pair stands for a diver, as shown on the deck. */
export type PairState = 'held' | 'to sign' | 'open' | 'closed'

/** One (skill, place) as it stands for a diver. */
export interface SnapshotPair {
  readonly pair: PairKey
  readonly state: PairState
  /** Of a closed one: by what, as a sentence. */
  readonly because: string | null
}

/** A pair worth watching of a diver today, and why, as a sentence. */
export interface ToWatch {
  readonly pair: PairKey
  readonly why: string
}

/** One diver of the coach's clubs, as the deck shows her. */
export interface SnapshotDiver {
  readonly id: string
  readonly club: string
  readonly name: string
  readonly shortName: string
  /** Level key that she works towards: the default `atLevel`. */
  readonly level: string
  /** Sentence when she is stood down; never the reason. */
  readonly standDown: string | null
  /** Sentence for ninety days after a coach noted that she has grown quickly. */
  readonly care?: string | null
  /** Sentence when the consent to keep a record was withdrawn: nothing new is recorded but incidents. */
  readonly recordingStopped?: string | null
  /** Whether a consent to video is in force: without it no moment is kept. */
  readonly video?: boolean
  readonly pairs: readonly SnapshotPair[]
  /** What is suggested for today's plan, what matters most first. */
  readonly watch?: readonly ToWatch[]
}

/** What this coach observed lately, so that it can be corrected. */
export interface SnapshotObservation {
  readonly attempt: AttemptItem
  readonly observation: ObservationItem
}

/** A call of this coach that is still open today, with the numbers in it that were kept: the deck goes on with it after a reload. */
export interface SnapshotCall {
  readonly call: CallItem
  readonly kept: readonly number[]
}

/** An incident that is open, or that was received in the last week: what the deck need not add by itself. */
export interface SnapshotIncident {
  readonly id: string
  readonly diver: string
  readonly pair: PairKey
  readonly what: IncidentKind
  readonly happenedAt: number
  readonly cleared: boolean
}

/** `GET /api/deck/snapshot`: everything that the deck shows, for the coach's clubs only. */
export interface DeckSnapshot {
  readonly v: typeof deckVersion
  readonly takenAt: number
  readonly coach: { readonly id: string; readonly name: string }
  readonly clubs: readonly { readonly id: string; readonly name: string; readonly zone: string }[]
  readonly squads: readonly {
    readonly id: string
    readonly club: string
    readonly name: string
    readonly divers: readonly string[]
  }[]
  readonly divers: readonly SnapshotDiver[]
  readonly edition: { readonly hash: string; readonly document: EditionDocument }
  readonly recent: readonly SnapshotObservation[]
  readonly calls?: readonly SnapshotCall[]
  readonly incidents?: readonly SnapshotIncident[]
}
