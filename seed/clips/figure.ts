import type { Point } from '@/lib/assessment/measure/picture'

/** Metres to the right of the board's tip and above the water. */
export interface Place {
  readonly x: number
  readonly y: number
}

/**
 * How the body is held, in degrees, for a diver who faces right: where the trunk points (0 up, clockwise), how far hips and
 * knees are bent (below 0 is arched), the arms against the trunk (0 overhead, 90 forward, 180 by the side), and how far the
 * feet are drawn up (0 pointed, 90 at a right angle to the shin).
 */
export interface Pose {
  readonly trunk: number
  readonly hip: number
  readonly knee: number
  readonly arm: number
  readonly foot: number
}

export const joints = ['toe', 'ankle', 'knee', 'hip', 'shoulder', 'head', 'hand'] as const
export type Joint = (typeof joints)[number]
export type Figure = Readonly<Record<Joint, Place>>

// Lengths in metres of a slight diver of 1.6 m, and shares of the mass: round figures, from memory.
const length = { foot: 0.16, shank: 0.4, thigh: 0.42, trunk: 0.46, head: 0.22, arm: 0.62 } as const
const mass = { legs: 0.34, trunk: 0.5, head: 0.07, arms: 0.09 } as const

const beyond = ({ x, y }: Place, degrees: number, metres: number): Place => {
  const angle = (degrees * Math.PI) / 180
  return { x: x + metres * Math.sin(angle), y: y + metres * Math.cos(angle) }
}
const between = (a: Place, b: Place): Place => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

/** The joints of a body held so, hip at the origin; `facing` 1 looks to the right, −1 to the left. */
function aroundHip({ trunk, hip, knee, arm, foot }: Pose, facing: 1 | -1): Figure {
  const [up, legs] = [facing * trunk, facing * (trunk + 180 - hip)]
  const shin = legs + facing * knee
  const middle = { x: 0, y: 0 }
  const shoulder = beyond(middle, up, length.trunk)
  const kneeAt = beyond(middle, legs, length.thigh)
  const ankle = beyond(kneeAt, shin, length.shank)
  return {
    hip: middle,
    shoulder,
    head: beyond(shoulder, up, length.head),
    hand: beyond(shoulder, up + facing * arm, length.arm),
    knee: kneeAt,
    ankle,
    toe: beyond(ankle, shin - facing * foot, length.foot),
  }
}

/** The centre of mass of a body, each part taken at its middle. */
export function centreOf({ hip, shoulder, head, hand, ankle }: Figure): Place {
  const parts: [number, Place][] = [
    [mass.legs, between(hip, ankle)],
    [mass.trunk, between(hip, shoulder)],
    [mass.head, between(shoulder, head)],
    [mass.arms, between(shoulder, hand)],
  ]
  const mean = (of: (place: Place) => number) => parts.reduce((sum, [share, place]) => sum + share * of(place), 0)
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) }
}

/** A body held so, with the given part of it (a joint, or its centre of mass) at a place. */
export function figureAt(pose: Pose, facing: 1 | -1, part: Joint | 'centre', at: Place): Figure {
  const figure = aroundHip(pose, facing)
  const from = part === 'centre' ? centreOf(figure) : figure[part]
  const moved = (joint: Joint): Place => ({ x: figure[joint].x - from.x + at.x, y: figure[joint].y - from.y + at.y })
  return {
    toe: moved('toe'),
    ankle: moved('ankle'),
    knee: moved('knee'),
    hip: moved('hip'),
    shoulder: moved('shoulder'),
    head: moved('head'),
    hand: moved('hand'),
  }
}

/** A camera that looks from the side: pixels to a metre, where the tip's plummet meets the water, and its tilt in degrees. */
export interface Camera {
  readonly pixels: number
  readonly origin: Point
  readonly tilt: number
}

/** Where a place stands in the picture. */
export function seen({ x, y }: Place, { pixels, origin, tilt }: Camera): Point {
  const [c, s] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)]
  const [right, down] = [pixels * x, -pixels * y]
  return { x: origin.x + c * right - s * down, y: origin.y + s * right + c * down }
}
