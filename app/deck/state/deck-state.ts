import type {
  AttemptItem,
  CallItem,
  DeckItem,
  IncidentItem,
  ObservationItem,
  SnapshotCall,
  SnapshotObservation,
} from '@/lib/assessment/deck/contract'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import type { Phase } from '@/lib/curriculum/model'
import { type Camera, cameraAfter, countedPast, firstClip } from './camera'
import { type Draft, type DraftAction, draftAfter, emptyDraft } from './draft'
import { type DayPlan, withPlan } from './plan'

/** A diver at a pair: what the coach stands before. */
export type Slot = `${string}/${PairKey}`
export const slotOf = (diver: string, pair: PairKey): Slot => `${diver}/${pair}`

/** Everything of this session that is not in the queue. Drafts are kept by key, so that going elsewhere loses nothing. */
export interface DeckState {
  readonly squad: string | null
  /** The newest call of each slot. */
  readonly calls: Readonly<Record<Slot, SnapshotCall>>
  /** Slots where the coach said that she is just watching. */
  readonly watching: readonly Slot[]
  /** Level to judge at, where it is not the one proposed. */
  readonly levels: Readonly<Record<Slot, string>>
  /** By slot, or by the id of the observation that is corrected or mended. */
  readonly drafts: Readonly<Record<string, Draft>>
  /** Phase that is open, by the same keys. */
  readonly phases: Readonly<Record<string, Phase>>
  /** What this coach saw and can correct, newest first; superseded ones are gone. */
  readonly seen: readonly SnapshotObservation[]
  /** The observation kept last at a slot, until the next one begins. */
  readonly justKept: Readonly<Record<Slot, string>>
  /** Recorded on this phone: they pause here before the server says so. */
  readonly incidents: readonly IncidentItem[]
  /** Of the last weeks, one a squad and day. */
  readonly plans: readonly DayPlan[]
  /** The camera of this session: the number of its next clip. */
  readonly camera: Camera
}

export type DeckAction =
  | {
      readonly type: 'snapshot'
      readonly recent: readonly SnapshotObservation[]
      readonly calls: readonly SnapshotCall[]
    }
  | { readonly type: 'squad'; readonly squad: string }
  | { readonly type: 'call'; readonly slot: Slot; readonly call: CallItem }
  | { readonly type: 'watch'; readonly slot: Slot }
  | { readonly type: 'choose again'; readonly slot: Slot }
  | { readonly type: 'level'; readonly slot: Slot; readonly level: string }
  | { readonly type: 'draft'; readonly key: string; readonly action: DraftAction }
  | { readonly type: 'open'; readonly key: string; readonly draft: Draft }
  | { readonly type: 'phase'; readonly key: string; readonly phase: Phase }
  | { readonly type: 'kept'; readonly slot: Slot; readonly attempt: AttemptItem; readonly observation: ObservationItem }
  | { readonly type: 'corrected'; readonly key: string; readonly observation: ObservationItem }
  | { readonly type: 'mended'; readonly key: string; readonly item: DeckItem }
  | { readonly type: 'incident'; readonly item: IncidentItem }
  | { readonly type: 'plan'; readonly plan: DayPlan }
  | { readonly type: 'camera'; readonly camera: Camera }
  | { readonly type: 'gone'; readonly ids: readonly string[] }

export const emptyDeck: DeckState = {
  squad: null,
  calls: {},
  watching: [],
  levels: {},
  drafts: {},
  phases: {},
  seen: [],
  justKept: {},
  incidents: [],
  plans: [],
  camera: firstClip,
}

/** The number of the next attempt of a call, or null when all have been kept. */
export function nextNumber({ call, kept }: SnapshotCall): number | null {
  for (let number = 1; number <= call.count; number++) if (!kept.includes(number)) return number
  return null
}

/** The call that the next attempt at a slot belongs to; null when none is open. */
export function openCall(state: DeckState, slot: Slot): SnapshotCall | null {
  const call = state.calls[slot]
  return call && nextNumber(call) !== null ? call : null
}

/** Calls that are not rated to their end, of one diver or of all, newest first. */
export const callsUnderWay = (state: DeckState, diver?: string): readonly SnapshotCall[] =>
  Object.values(state.calls)
    .filter((open) => (diver === undefined || open.call.diver === diver) && nextNumber(open) !== null)
    .sort((a, b) => b.call.calledAt - a.call.calledAt)

export const slotOfItem = (item: { diver: string; skill: string; place: CallItem['place'] }): Slot =>
  slotOf(item.diver, `${item.skill}@${item.place}`)

function without<Value>(record: Readonly<Record<string, Value>>, key: string): Record<string, Value> {
  const { [key]: _, ...rest } = record
  return rest
}

/** Newest first; an observation that another one supersedes is not shown again. */
function joined(older: readonly SnapshotObservation[], newer: readonly SnapshotObservation[]): SnapshotObservation[] {
  const all = new Map([...older, ...newer].map((entry) => [entry.observation.id, entry]))
  for (const { observation } of [...all.values()]) if (observation.supersedes) all.delete(observation.supersedes.id)
  return [...all.values()].sort((a, b) => b.observation.observedAt - a.observation.observedAt)
}

function afterSnapshot(
  state: DeckState,
  recent: readonly SnapshotObservation[],
  calls: readonly SnapshotCall[],
): DeckState {
  const known = { ...state.calls }
  for (const open of calls) {
    const slot = slotOfItem(open.call)
    const here = known[slot]
    // Numbers kept on this device and not yet sent are unknown to the server.
    if (here?.call.id === open.call.id)
      known[slot] = { call: here.call, kept: [...new Set([...here.kept, ...open.kept])] }
    else if (!here || here.call.calledAt < open.call.calledAt) known[slot] = open
  }
  // Whether an attempt still waits for its clip is the server's to say.
  const attempts = new Map(recent.map(({ attempt, observation }) => [observation.id, attempt]))
  const seen = state.seen.map((entry) => ({ ...entry, attempt: attempts.get(entry.observation.id) ?? entry.attempt }))
  return { ...state, calls: known, seen: joined(recent, seen) }
}

function afterKept(state: DeckState, slot: Slot, attempt: AttemptItem, observation: ObservationItem): DeckState {
  const open = state.calls[slot]
  const number = attempt.call && open?.call.id === attempt.call.id ? attempt.call.number : null
  const draft = state.drafts[slot] ?? emptyDraft
  return {
    ...state,
    calls:
      open && number !== null ? { ...state.calls, [slot]: { ...open, kept: [...open.kept, number] } } : state.calls,
    // A test or a meet goes on; everything else begins anew.
    drafts: { ...state.drafts, [slot]: { ...emptyDraft, setting: draft.setting } },
    seen: [{ attempt, observation }, ...state.seen],
    // The outbox may know of a clip that the marks of a killed page do not.
    camera: attempt.filmed ? countedPast(state.camera, attempt.filmed.clip) : state.camera,
    justKept: { ...state.justKept, [slot]: observation.id },
  }
}

/** What went for good: its drafts, its entry in the list, its number in the call. */
function afterGone(state: DeckState, ids: readonly string[]): DeckState {
  const lost = state.seen.filter(({ attempt, observation }) => ids.includes(observation.id) || ids.includes(attempt.id))
  const calls: Record<Slot, SnapshotCall> = {}
  for (const [slot, open] of Object.entries(state.calls) as [Slot, SnapshotCall][]) {
    if (ids.includes(open.call.id)) continue
    const freed = lost.filter(({ attempt }) => ids.includes(attempt.id) && attempt.call?.id === open.call.id)
    const numbers = freed.map(({ attempt }) => attempt.call?.number)
    calls[slot] = { ...open, kept: open.kept.filter((number) => !numbers.includes(number)) }
  }
  const incidents = state.incidents.filter(({ id }) => !ids.includes(id))
  return { ...state, calls, incidents, seen: state.seen.filter((entry) => !lost.includes(entry)) }
}

function afterMended(state: DeckState, key: string, item: DeckItem): DeckState {
  const seen = state.seen.map((entry) => {
    if (item.kind === 'observation' && entry.observation.id === key) return { ...entry, observation: item }
    if (item.kind === 'attempt' && entry.attempt.id === key)
      return { attempt: item, observation: { ...entry.observation, attempt: item.id } }
    return entry
  })
  return { ...state, seen, drafts: without(state.drafts, key) }
}

/** The deck after one action. */
export function deckAfter(state: DeckState, action: DeckAction): DeckState {
  switch (action.type) {
    case 'snapshot':
      return afterSnapshot(state, action.recent, action.calls)
    case 'squad':
      return { ...state, squad: action.squad }
    case 'call':
      return {
        ...state,
        calls: { ...state.calls, [action.slot]: { call: action.call, kept: [] } },
        watching: state.watching.filter((slot) => slot !== action.slot),
        justKept: without(state.justKept, action.slot),
      }
    case 'watch':
      return { ...state, watching: [...state.watching, action.slot], justKept: without(state.justKept, action.slot) }
    case 'choose again':
      return { ...state, watching: state.watching.filter((slot) => slot !== action.slot) }
    case 'level':
      return { ...state, levels: { ...state.levels, [action.slot]: action.level } }
    case 'draft': {
      const before = state.drafts[action.key] ?? emptyDraft
      const after = draftAfter(before, action.action)
      if (after === before) return state
      return {
        ...state,
        drafts: { ...state.drafts, [action.key]: after },
        justKept: without(state.justKept, action.key),
        camera: cameraAfter(state.camera, before.filmed, after.filmed),
      }
    }
    case 'open':
      return state.drafts[action.key] ? state : { ...state, drafts: { ...state.drafts, [action.key]: action.draft } }
    case 'phase':
      return { ...state, phases: { ...state.phases, [action.key]: action.phase } }
    case 'kept':
      return afterKept(state, action.slot, action.attempt, action.observation)
    case 'corrected': {
      const old = state.seen.find(({ observation }) => observation.id === action.key)
      if (!old) return state
      return {
        ...state,
        seen: joined(state.seen, [{ attempt: old.attempt, observation: action.observation }]),
        drafts: without(state.drafts, action.key),
      }
    }
    case 'mended':
      return afterMended(state, action.key, action.item)
    case 'incident':
      return { ...state, incidents: [...state.incidents, action.item] }
    case 'camera':
      return { ...state, camera: action.camera }
    case 'plan':
      return { ...state, plans: withPlan(state.plans, action.plan) }
    case 'gone':
      return afterGone(state, action.ids)
  }
}
