import type { Point } from '@/lib/assessment/measure/picture'
import {
  type Asked,
  askedFor,
  type Frame,
  type OnFrames,
  type Slot,
  slots,
  type TakenKind,
  takenKinds,
  type UprightKind,
} from '@/lib/assessment/measure/taken'

/** What a step back brings back. */
interface Placed {
  readonly points: OnFrames['points']
  /** The frame that the points of the body stand on; of a turn also the later one. */
  readonly frames: readonly [Frame | null, Frame | null]
  readonly chosen: Slot | null
}

/** A measure while it is being placed. */
export interface Draft extends Placed {
  readonly kind: TakenKind
  readonly upright: UprightKind
  readonly down: boolean
  /** As typed. */
  readonly metres: string
  readonly pixel: number
  readonly past: readonly Placed[]
}

/** Why a point cannot be placed on the frame that is shown. */
export type Misplaced =
  | { readonly kind: 'other frame'; readonly atMs: number }
  | { readonly kind: 'not later'; readonly atMs: number }

/** What to place for a draft, in order; nothing for a flight. */
export const askedBy = ({ kind, upright }: Pick<Draft, 'kind' | 'upright'>): readonly Asked[] =>
  kind === 'flight' ? [] : askedFor(kind, upright)

/** The first point that is not placed yet, looking on from one; null when all are. */
export function nextSlot(draft: Draft, after: Slot | null = null): Slot | null {
  const asked = askedBy(draft).map(({ slot }) => slot)
  const from = after ? asked.indexOf(after) + 1 : 0
  return [...asked.slice(from), ...asked.slice(0, from)].find((slot) => !draft.points[slot]) ?? null
}

/** Nothing placed yet. */
export const emptyDraft: Draft = {
  kind: 'tilt',
  upright: 'picture',
  down: false,
  metres: '',
  pixel: 2,
  points: {},
  frames: [null, null],
  chosen: 'ankle',
  past: [],
}

/** The draft with a point chosen that its measure asks for: the one it has, else the next to place. */
const choosing = (draft: Draft): Draft =>
  askedBy(draft).some(({ slot }) => slot === draft.chosen) ? draft : { ...draft, chosen: nextSlot(draft) }

/** The draft with other choices: what was placed stays, since the same points serve several measures. */
export const chosenFor = (
  draft: Draft,
  changes: Partial<Pick<Draft, 'kind' | 'upright' | 'down' | 'metres' | 'pixel'>>,
): Draft => choosing({ ...draft, ...changes })

/** The draft as it can be stepped back to. */
export const remembered = (draft: Draft): Draft => {
  const { points, frames, chosen, past } = draft
  return { ...draft, past: [...past, { points, frames, chosen }] }
}

/** One step back, in the measure that is chosen by now; the same draft at the start. */
export function undone(draft: Draft): Draft {
  const last = draft.past.at(-1)
  return last ? choosing({ ...draft, ...last, past: draft.past.slice(0, -1) }) : draft
}

const slotsOn = (frame: 0 | 1): ReadonlySet<Slot> =>
  new Set(
    takenKinds.flatMap((kind) =>
      askedBy({ kind, upright: 'picture' }).flatMap((one) => (one.frame === frame ? [one.slot] : [])),
    ),
  )
/** The points that any measure binds to its first frame, and to its later one. */
const frameSlots = [slotsOn(0), slotsOn(1)] as const

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value))

/**
 * Puts a point where the coach says, inside the picture, on the frame that is shown. The chosen measure's other points hold it to
 * their frame; those of other measures that stand on another frame are dropped, for they are no points of this one.
 */
export function placed(draft: Draft, slot: Slot, { x, y }: Point, shown: Frame): Draft | Misplaced {
  const asked = askedBy(draft)
  const frame = asked.find((one) => one.slot === slot)?.frame ?? null
  const at = { [slot]: { x: within(x, shown.width), y: within(y, shown.height) } }
  if (frame === null) return { ...draft, points: { ...draft.points, ...at }, chosen: slot }
  const [first, later] = draft.frames
  const bound = draft.frames[frame]
  const others = asked.some((one) => one.frame === frame && one.slot !== slot && draft.points[one.slot])
  if (bound && bound.atMs !== shown.atMs && others) return { kind: 'other frame', atMs: bound.atMs }
  if (frame === 1 && first && shown.atMs <= first.atMs) return { kind: 'not later', atMs: first.atMs }
  const stays = frame === 1 || (later !== null && later.atMs > shown.atMs) ? later : null
  const frames: Draft['frames'] = frame === 0 ? [shown, stays] : [first, shown]
  const moved = ([0, 1] as const).filter((one) => draft.frames[one]?.atMs !== frames[one]?.atMs)
  const kept = Object.entries(draft.points).filter(([one]) => !moved.some((on) => frameSlots[on].has(one as Slot)))
  return { ...draft, points: { ...Object.fromEntries(kept), ...at }, chosen: slot, frames }
}

/** The points that a step dropped. */
export const droppedIn = (before: Draft, after: Draft): Slot[] =>
  slots.filter((slot) => before.points[slot] && !after.points[slot])

/** Metres as typed, with a point or a comma; null when it is no number. */
export function readMetres(typed: string): number | null {
  const text = typed.trim().replace(',', '.')
  return /^\d+(\.\d+)?$/.test(text) ? Number(text) : null
}

/** The points with all that belongs to them, as they are measured and sent; null for a flight. `frameUs` is what was learned by now. */
export function toTaken(draft: Draft, frameUs: number | null): OnFrames | null {
  const { kind, upright, down, metres, pixel } = draft
  if (kind === 'flight') return null
  const asked = askedBy(draft)
  const frames = (kind === 'turn' ? draft.frames : draft.frames.slice(0, 1)).flatMap((frame) =>
    frame ? [{ ...frame, frameUs: frame.frameUs ?? frameUs }] : [],
  )
  const points = Object.fromEntries(
    asked.flatMap(({ slot }) => (draft.points[slot] ? [[slot, draft.points[slot]]] : [])),
  )
  return {
    kind,
    frames,
    points,
    upright,
    down: kind === 'arms' && down,
    metres: kind === 'distance' ? readMetres(metres) : null,
    pixel,
  }
}

/** The points that stand on the frame that is shown, and those that stand on any. */
export function visibleSlots(draft: Draft, shownMs: number): Slot[] {
  return askedBy(draft).flatMap(({ slot, frame }) =>
    draft.points[slot] && (frame === null || draft.frames[frame]?.atMs === shownMs) ? [slot] : [],
  )
}
