import type { AttemptItem, CallItem, MomentItem, ObservationItem, SnapshotCall } from '@/lib/assessment/deck/contract'
import { type MomentErrors, readMoment } from '@/lib/assessment/moment-text'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { nextNumber } from './deck-state'
import type { Draft } from './draft'
import { type RatingRow, type RatingSheet, stillToRate } from './rating-sheet'

/** What every item carries that the screen does not know by itself. */
export interface Stamp {
  readonly now: number
  readonly device: string
  readonly edition: string
  /** A fresh UUIDv7 each time. */
  readonly newId: () => string
}

/** Why a draft cannot be kept yet, each at its place. */
export interface Unkept {
  readonly toRate: readonly RatingRow[]
  /** By moment id. */
  readonly moments: Readonly<Record<string, MomentErrors>>
  readonly note: string | null
  readonly nothing: boolean
}

/** Longest note, as the contract has it. */
export const noteLimit = 2000

const blank = ({ link, start, end }: Draft['moments'][number]): boolean => `${link}${start}${end}`.trim() === ''

/** Nothing rated, marked or noted: there is nothing to keep. */
const silent = (draft: Draft): boolean =>
  Object.keys(draft.ratings).length === 0 &&
  draft.faults.length === 0 &&
  draft.note.trim() === '' &&
  draft.moments.every(blank)

/** What stands against keeping a draft; null when nothing does. A moment left blank counts as not there. */
export function unkept(draft: Draft, sheet: RatingSheet, restAsExpected: boolean): Unkept | null {
  const moments: Record<string, MomentErrors> = {}
  for (const moment of draft.moments) {
    const reading = blank(moment) ? null : readMoment(moment)
    if (reading && !reading.ok) moments[moment.id] = reading.errors
  }
  const long = draft.note.trim().length - noteLimit
  const found: Unkept = {
    toRate: stillToRate(sheet, draft),
    moments,
    note: long > 0 ? `The note is ${long} characters too long.` : null,
    nothing: !restAsExpected && silent(draft),
  }
  const free = found.toRate.length === 0 && Object.keys(moments).length === 0 && !found.note && !found.nothing
  return free ? null : found
}

const momentsOf = (draft: Draft): MomentItem[] =>
  draft.moments.flatMap((typed) => {
    const reading = blank(typed) ? null : readMoment(typed)
    return reading?.ok ? [reading.moment] : []
  })

const said = (draft: Draft, restAsExpected: boolean) => ({
  ratings: { ...draft.ratings },
  restAsExpected,
  faults: [...draft.faults],
  note: draft.note.trim() === '' ? null : draft.note.trim(),
  moments: momentsOf(draft),
})

interface Subject {
  readonly diver: string
  readonly pair: Pair
  readonly atLevel: string
}

/** Declares that the next `count` attempts count, from now. */
export const makeCall = (
  { diver, pair, atLevel }: Subject,
  count: number,
  { now, device, newId }: Stamp,
): CallItem => ({
  kind: 'call',
  id: newId(),
  diver,
  skill: pair.holding.skill,
  place: pair.holding.place,
  atLevel,
  count,
  calledAt: now,
  device,
})

/** The attempt that is over and what was seen of it. An attempt of a call is judged at the level that was called. */
export function makeKept(
  { diver, pair, atLevel }: Subject,
  draft: Draft,
  open: SnapshotCall | null,
  restAsExpected: boolean,
  { now, device, edition, newId }: Stamp,
): { readonly attempt: AttemptItem; readonly observation: ObservationItem } {
  const number = open ? nextNumber(open) : null
  const attempt: AttemptItem = {
    kind: 'attempt',
    id: newId(),
    diver,
    skill: pair.holding.skill,
    place: pair.holding.place,
    atLevel: open?.call.atLevel ?? atLevel,
    call: open && number !== null ? { id: open.call.id, number } : null,
    attemptedAt: now,
    setting: draft.setting,
    cued: draft.cued,
    device,
    ...(draft.filmed ? { filmed: draft.filmed } : {}),
  }
  const observation: ObservationItem = {
    kind: 'observation',
    id: newId(),
    attempt: attempt.id,
    edition,
    observedOn: 'deck',
    observedAt: now,
    ...said(draft, restAsExpected),
    supersedes: null,
  }
  return { attempt, observation }
}

/** What replaces an earlier observation, and why. Moments take new ids, since the old ones stay with the old observation. */
export const makeCorrection = (
  old: ObservationItem,
  draft: Draft,
  restAsExpected: boolean,
  reason: string,
  { now, edition, newId }: Stamp,
): ObservationItem => {
  const words = said(draft, restAsExpected)
  return {
    ...old,
    ...words,
    moments: words.moments.map((moment) => ({ ...moment, id: newId() })),
    id: newId(),
    edition,
    observedAt: now,
    supersedes: { id: old.id, reason: reason.trim() },
  }
}

/** A refused observation with what was changed in it. It was not stored, so it keeps its id unless that id is taken. */
export const makeMended = (
  refused: ObservationItem,
  draft: Draft,
  restAsExpected: boolean,
  idTaken: boolean,
  { edition, newId }: Stamp,
): ObservationItem => ({
  ...refused,
  ...said(draft, restAsExpected),
  edition,
  id: idTaken ? newId() : refused.id,
})

/** Critical criteria that a correction raises: they count when the head coach accepts them. */
export const raisedCritical = (old: ObservationItem, draft: Draft, sheet: RatingSheet): readonly RatingRow[] =>
  sheet.critical.filter(({ criterion }) => {
    const [before, after] = [old.ratings[criterion.key], draft.ratings[criterion.key]]
    return before !== undefined && (after === undefined || after > before)
  })
