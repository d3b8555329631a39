import type { FilmedItem, ObservationItem } from '@/lib/assessment/deck/contract'
import type { MomentText } from '@/lib/assessment/moment-text'
import type { Rating } from '@/lib/curriculum/model'

/** Where the dive was done: training unless said otherwise. */
export type Setting = 'training' | 'test' | 'meet'

/** What is marked by tapping: the part that Undo takes back. */
export interface Marks {
  /** By criterion key; absent = not watched. */
  readonly ratings: Readonly<Record<string, Rating>>
  /** Critical criteria that the coach says she did not see: they stay blank, and that is said, not forgotten. */
  readonly notSeen: readonly string[]
  /** Fault keys in the order in which they were marked. */
  readonly faults: readonly string[]
  /** That it was filmed, when, and as which clip; null when nobody said so. */
  readonly filmed: FilmedItem | null
}

/** One attempt being rated. Typed text stands apart from the marks, so that Undo never eats it. */
export interface Draft extends Marks {
  readonly cued: boolean
  readonly setting: Setting
  readonly note: string
  readonly moments: readonly MomentText[]
  /** Marks before each tap, newest last. */
  readonly before: readonly Marks[]
}

export const emptyDraft: Draft = {
  ratings: {},
  notSeen: [],
  faults: [],
  filmed: null,
  cued: false,
  setting: 'training',
  note: '',
  moments: [],
  before: [],
}

export type DraftAction =
  | { readonly type: 'rate'; readonly criterion: string; readonly rating: Rating }
  | { readonly type: 'clear'; readonly criterion: string }
  | { readonly type: 'not seen'; readonly criterion: string }
  | { readonly type: 'mark fault'; readonly fault: string }
  | { readonly type: 'filmed'; readonly filmed: FilmedItem }
  | { readonly type: 'not filmed' }
  | { readonly type: 'clip'; readonly clip: number }
  | { readonly type: 'undo' }
  | { readonly type: 'say'; readonly changes: Partial<Pick<Draft, 'cued' | 'setting' | 'note'>> }
  | { readonly type: 'add moment'; readonly moment: MomentText }
  | { readonly type: 'change moment'; readonly moment: MomentText }
  | { readonly type: 'drop moment'; readonly id: string }

/** How many taps can be taken back. */
const memory = 60

function mark(draft: Draft, changes: Partial<Marks>): Draft {
  const { ratings, notSeen, faults, filmed } = draft
  return { ...draft, ...changes, before: [...draft.before, { ratings, notSeen, faults, filmed }].slice(-memory) }
}

/** Puts the clip number right, also where Undo would bring it back. */
const renumbered = <M extends Marks>(marks: M, clip: number): M =>
  marks.filmed ? { ...marks, filmed: { ...marks.filmed, clip } } : marks

function without<Value>(record: Readonly<Record<string, Value>>, key: string): Readonly<Record<string, Value>> {
  const { [key]: _, ...rest } = record
  return rest
}

const dropped = (keys: readonly string[], key: string): readonly string[] => keys.filter((other) => other !== key)

/** The draft after one action. The same object when nothing changes, so that a double tap costs no Undo. */
export function draftAfter(draft: Draft, action: DraftAction): Draft {
  switch (action.type) {
    case 'rate':
      if (draft.ratings[action.criterion] === action.rating) return draft
      return mark(draft, {
        ratings: { ...draft.ratings, [action.criterion]: action.rating },
        notSeen: dropped(draft.notSeen, action.criterion),
      })
    case 'clear':
      if (draft.ratings[action.criterion] === undefined && !draft.notSeen.includes(action.criterion)) return draft
      return mark(draft, {
        ratings: without(draft.ratings, action.criterion),
        notSeen: dropped(draft.notSeen, action.criterion),
      })
    case 'not seen':
      if (draft.notSeen.includes(action.criterion)) return draft
      return mark(draft, {
        ratings: without(draft.ratings, action.criterion),
        notSeen: [...draft.notSeen, action.criterion],
      })
    case 'mark fault':
      return mark(draft, {
        faults: draft.faults.includes(action.fault)
          ? dropped(draft.faults, action.fault)
          : [...draft.faults, action.fault],
      })
    case 'filmed':
      return draft.filmed ? draft : mark(draft, { filmed: action.filmed })
    case 'not filmed':
      return draft.filmed ? mark(draft, { filmed: null }) : draft
    case 'clip':
      return {
        ...renumbered(draft, action.clip),
        before: draft.before.map((marks) => renumbered(marks, action.clip)),
      }
    case 'undo': {
      const marks = draft.before.at(-1)
      return marks ? { ...draft, ...marks, before: draft.before.slice(0, -1) } : draft
    }
    case 'say':
      return { ...draft, ...action.changes }
    case 'add moment':
      return { ...draft, moments: [...draft.moments, action.moment] }
    case 'change moment':
      return {
        ...draft,
        moments: draft.moments.map((moment) => (moment.id === action.moment.id ? action.moment : moment)),
      }
    case 'drop moment':
      return { ...draft, moments: draft.moments.filter((moment) => moment.id !== action.id) }
  }
}

/** True when leaving would lose something that the coach did. */
export const touched = (draft: Draft): boolean =>
  Object.keys(draft.ratings).length > 0 ||
  draft.notSeen.length > 0 ||
  draft.faults.length > 0 ||
  draft.filmed !== null ||
  draft.note.trim() !== '' ||
  draft.moments.some(({ link, start, end }) => `${link}${start}${end}`.trim() !== '')

/** An observation opened for correction or mending, as it was written. Criteria and faults that no longer apply are left out. */
export function draftOf(
  observation: ObservationItem,
  applies: { readonly criteria: ReadonlySet<string>; readonly faults: ReadonlySet<string> },
): Draft {
  return {
    ...emptyDraft,
    ratings: Object.fromEntries(Object.entries(observation.ratings).filter(([key]) => applies.criteria.has(key))),
    faults: observation.faults.filter((key) => applies.faults.has(key)),
    note: observation.note ?? '',
    moments: observation.moments.map(({ id, link, start, end }) => ({
      id,
      link,
      start: String(start),
      end: end === null ? '' : String(end),
    })),
  }
}
