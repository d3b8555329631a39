import type { Point } from '@/lib/assessment/measure/picture'
import {
  type Asked,
  askedFor,
  type Frame,
  type OnFrames,
  type Slot,
  type TakenKind,
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

/** The draft with other choices: what was placed stays, since the same points serve several measures. */
export function chosenFor(
  draft: Draft,
  changes: Partial<Pick<Draft, 'kind' | 'upright' | 'down' | 'metres' | 'pixel'>>,
) {
  const next: Draft = { ...draft, ...changes }
  const known = askedBy(next).some(({ slot }) => slot === draft.chosen)
  return known ? next : { ...next, chosen: nextSlot(next) }
}

/** The draft as it can be stepped back to. */
export const remembered = (draft: Draft): Draft => {
  const { points, frames, chosen, past } = draft
  return { ...draft, past: [...past, { points, frames, chosen }] }
}

/** One step back; the same draft at the start. */
export function undone(draft: Draft): Draft {
  const last = draft.past.at(-1)
  return last ? { ...draft, ...last, past: draft.past.slice(0, -1) } : draft
}

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value))

/** Puts a point where the coach says, inside the picture, on the frame that is shown. */
export function placed(draft: Draft, slot: Slot, { x, y }: Point, shown: Frame): Draft | Misplaced {
  const asked = askedBy(draft)
  const frame = asked.find((one) => one.slot === slot)?.frame ?? null
  const points = { ...draft.points, [slot]: { x: within(x, shown.width), y: within(y, shown.height) } }
  if (frame === null) return { ...draft, points, chosen: slot }
  const bound = draft.frames[frame]
  const others = asked.some((one) => one.frame === frame && one.slot !== slot && draft.points[one.slot])
  if (bound && bound.atMs !== shown.atMs && others) return { kind: 'other frame', atMs: bound.atMs }
  const first = draft.frames[0]
  if (frame === 1 && first && shown.atMs <= first.atMs) return { kind: 'not later', atMs: first.atMs }
  return { ...draft, points, chosen: slot, frames: frame === 0 ? [shown, draft.frames[1]] : [first, shown] }
}

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
