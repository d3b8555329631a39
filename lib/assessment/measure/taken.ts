import type { Quantity } from './measured'
import type { Point } from './picture'

/** What can be taken on a film, in the order in which a dive asks for it. */
export const takenKinds = ['tilt', 'arms', 'hip', 'distance', 'turn', 'flight'] as const
export type TakenKind = (typeof takenKinds)[number]

/** How the upright of a picture is known; the points of a plumb line or of a board's edge at rest are placed as well. */
export const uprights = ['picture', 'plumb', 'level'] as const
export type UprightKind = (typeof uprights)[number]

/**
 * All that can be placed on a picture. `near` is the part of the body nearest to the board's tip; `board` lies on the board
 * behind its tip, and tells which side is the water.
 */
export const slots = [
  'ankle',
  'hip',
  'shoulder',
  'head',
  'hand',
  'near',
  'later hip',
  'later shoulder',
  'tip',
  'board',
  'length from',
  'length to',
  'plumb top',
  'plumb bottom',
  'edge left',
  'edge right',
] as const
export type Slot = (typeof slots)[number]

/** A paused frame: its time in the film in milliseconds, how long one is shown in microseconds, and its size in film pixels. */
export interface Frame {
  readonly atMs: number
  /** Null where the player could not learn it. */
  readonly frameUs: number | null
  readonly width: number
  readonly height: number
}

/** Points placed on one frame, or of a turn on two. Places are in film pixels, whatever size the film was shown at. */
export interface OnFrames {
  readonly kind: Exclude<TakenKind, 'flight'>
  readonly frames: readonly Frame[]
  readonly points: Readonly<Partial<Record<Slot, Point>>>
  readonly upright: UprightKind
  /** Of arms: from straight down, for the line at the entry, instead of from straight up. */
  readonly down: boolean
  /** Of a distance: the known length, in metres. */
  readonly metres: number | null
  /** Standard deviation of placing a point, in film pixels. */
  readonly pixel: number
}

/** When something was first seen, and how long the frame is shown. */
export interface MarkedTime {
  readonly atMs: number
  readonly frameUs: number | null
}

/** A flight between marks: the first frame off the board, the first that touches the water, and where marked the highest point. */
export interface OfFlight {
  readonly kind: 'flight'
  readonly leaves: MarkedTime
  readonly meets: MarkedTime
  readonly top: MarkedTime | null
  /** Metres that the centre of mass comes down in all: stated, never measured. */
  readonly drop: Quantity
}

/** A flight between a coach's own marks, by the key of each; null while the board left or the water is not marked. */
export function flightBetween(
  marks: readonly (MarkedTime & { readonly key: string })[],
  drop: Quantity,
): OfFlight | null {
  const at = (key: string): MarkedTime | null => {
    const mark = marks.find((one) => one.key === key)
    return mark ? { atMs: mark.atMs, frameUs: mark.frameUs } : null
  }
  const [leaves, meets] = [at('flight'), at('entry')]
  return leaves && meets ? { kind: 'flight', leaves, meets, top: at('highest point'), drop } : null
}

/** All that a measure is computed from. */
export type Taken = OnFrames | OfFlight

/** One point to place: on which frame, and whether the measure can do without it. */
export interface Asked {
  readonly slot: Slot
  /** 0 or 1: a frame that the points of the body share; null for what stands still, and may be placed on any. */
  readonly frame: 0 | 1 | null
  readonly optional: boolean
}

const on = (frame: 0 | 1 | null, optional: boolean, ...names: Slot[]): Asked[] =>
  names.map((slot) => ({ slot, frame, optional }))

const bodySlots: Readonly<Record<OnFrames['kind'], readonly Asked[]>> = {
  tilt: on(0, true, 'ankle', 'hip', 'shoulder', 'head'),
  arms: on(0, false, 'shoulder', 'hand'),
  hip: on(0, false, 'shoulder', 'hip', 'ankle'),
  distance: [...on(0, false, 'near'), ...on(null, false, 'tip', 'board', 'length from', 'length to')],
  turn: [...on(0, false, 'hip', 'shoulder'), ...on(1, false, 'later hip', 'later shoulder')],
}

/** Whether a measure needs to know where up is: an angle at a joint does not, nor one between two frames of a still camera. */
export const needsUpright = (kind: OnFrames['kind']): boolean => kind !== 'hip' && kind !== 'turn'

/** The points to place for a measure, in order, those of the upright last. */
export function askedFor(kind: OnFrames['kind'], upright: UprightKind): readonly Asked[] {
  if (!needsUpright(kind) || upright === 'picture') return bodySlots[kind]
  const line =
    upright === 'plumb' ? on(null, false, 'plumb top', 'plumb bottom') : on(null, false, 'edge left', 'edge right')
  return [...bodySlots[kind], ...line]
}
