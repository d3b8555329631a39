import type { Instant } from './time'

/** What a consent is for: to keep a record of the diver, to link video of her, and to show moments of her as exemplars. */
export const purposes = ['record', 'video', 'exemplar'] as const
export type Purpose = (typeof purposes)[number]

/** Who may see the exemplars of a diver: coaches of her club, whoever has a role in the programme, or everybody. */
export const reaches = ['club', 'programme', 'everybody'] as const
export type Reach = (typeof reaches)[number]

/** A consent that was given, or withdrawn. */
export interface ConsentFact {
  readonly id: string
  readonly purpose: Purpose
  readonly given: boolean
  readonly recordedAt: Instant
  /** Of a consent to exemplars that was given, how far it reaches; null otherwise. */
  readonly reach: Reach | null
}

/** How a diver's consents stand: the latest of each purpose, null where none was ever recorded. */
export type Consents = Readonly<Record<Purpose, ConsentFact | null>>

/** The latest of each purpose counts; of two at one instant the greater id. */
export function consentsOf(facts: readonly ConsentFact[]): Consents {
  const latest = (purpose: Purpose): ConsentFact | null =>
    facts
      .filter((fact) => fact.purpose === purpose)
      .reduce<ConsentFact | null>((last, fact) => (last && isAfter(last, fact) ? last : fact), null)
  return { record: latest('record'), video: latest('video'), exemplar: latest('exemplar') }
}

const isAfter = (a: ConsentFact, b: ConsentFact): boolean =>
  a.recordedAt > b.recordedAt || (a.recordedAt === b.recordedAt && a.id > b.id)

/** Whether video moments may be kept and shown: only while a consent to video is in force. */
export const mayKeepVideo = ({ video }: Consents): boolean => video?.given ?? false

/** How far exemplars of the diver reach; null: none is shown. They want the consent to video beside their own. */
export const exemplarReach = ({ video, exemplar }: Consents): Reach | null =>
  video?.given && exemplar?.given ? exemplar.reach : null

/**
 * Whether something dived, called or rated at `at` may not be recorded any more: the consent to keep a record was withdrawn
 * before. One that was never recorded stops nothing; it is a to-do of the head coach.
 */
export const isRecordingStopped = ({ record }: Consents, at: Instant): boolean =>
  record !== null && !record.given && record.recordedAt <= at

/** Why a rating, call or attempt is not taken, and what to do. */
export const recordingStopped =
  'the consent to keep a record of this diver was withdrawn: nothing new is recorded but incidents. Ask the head coach'

/** Why an observation was kept without its moments, and what to do. */
export const keptWithoutVideo =
  'the rating is kept without its video: no consent to video of this diver is in force. Once it is recorded, correct the rating and add the moment again'

/** Why an attempt was kept without its mark "filmed", and what to do. */
export const keptUnfilmed =
  'the attempt is kept, but not that it was filmed: no consent to video of this diver is in force. Do not film; delete what was filmed'
