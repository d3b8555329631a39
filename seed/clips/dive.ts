import { entryFor, gravity, riseFor, timeFor } from '@/lib/assessment/measure/flight'
import { centreOf, type Figure, figureAt, type Place, type Pose } from './figure'

/** A pose at a share of the way: of the press before the take-off, or of the flight. */
export interface Key extends Pose {
  readonly at: number
}

/** A dive to simulate: poses of press and flight, how the body leaves the board, and what the film is to show. */
export interface SimulatedDive {
  /** Metres of the board above the water. */
  readonly height: number
  readonly facing: 1 | -1
  /** Metres a second, upwards and away from the board. */
  readonly speed: number
  readonly away: number
  readonly press: readonly Key[]
  readonly flight: readonly Key[]
}

/** What is true of a simulated dive: seconds from the take-off, metres, metres a second. */
export interface Truth {
  readonly flightTime: number
  readonly drop: number
  readonly rise: number
  readonly entrySpeed: number
}

/** Seconds of film before the take-off; the last is not a whole number of frames, so that events fall between them. */
const lead = 1.007
/** Seconds of the press, which ends with the take-off. */
export const pressTime = 0.7
/** Seconds of film after the hands meet the water. */
const tail = 0.7

const ease = (share: number): number => share * share * (3 - 2 * share)

/** The pose at a share of the way through its keys. */
function poseAt(keys: readonly Key[], share: number): Pose {
  const after = keys.findIndex(({ at }) => at >= share)
  const [from, to] = [keys[Math.max(0, after - 1)], keys[after < 0 ? keys.length - 1 : after]]
  if (!from || !to) throw new RangeError('a dive needs poses')
  const way = to.at > from.at ? ease(Math.min(1, Math.max(0, (share - from.at) / (to.at - from.at)))) : 1
  const mixed = (of: (pose: Pose) => number) => of(from) + (of(to) - of(from)) * way
  return {
    trunk: mixed(({ trunk }) => trunk),
    hip: mixed(({ hip }) => hip),
    knee: mixed(({ knee }) => knee),
    arm: mixed(({ arm }) => arm),
    foot: mixed(({ foot }) => foot),
  }
}

/** How far the board's tip is pushed down, in metres, `share` of the way through the press. */
const pushed = (share: number): number => (share < 0.4 ? 0 : 0.22 * Math.sin(((share - 0.4) / 0.6) * Math.PI))

/** One dive told in time: 0 is the start of the film. */
export interface Told {
  readonly takeOff: number
  readonly entry: number
  readonly length: number
  readonly truth: Truth
  readonly figureAt: (time: number) => Figure
  readonly poseAt: (time: number) => Pose
  /** Metres that the board's tip is below its place at rest. */
  readonly boardAt: (time: number) => number
}

/** Simulates a dive: the feet stay on the tip until the take-off, then the centre of mass falls freely until the hands meet the water. */
export function tell(dive: SimulatedDive): Told {
  const { height, facing, speed, away, press, flight } = dive
  // Who faces the board stands on the balls of the feet, heels over the water.
  const tip: Place = { x: facing > 0 ? -0.04 : -0.09, y: height + 0.02 }
  const leaves = centreOf(figureAt(poseAt(press, 1), facing, 'toe', tip))
  const meets = centreOf(figureAt(poseAt(flight, 1), facing, 'hand', { x: 0, y: 0 }))
  const drop = leaves.y - meets.y
  const flightTime = timeFor(speed, drop)
  const truth = { flightTime, drop, rise: riseFor(speed), entrySpeed: entryFor(speed, drop) }
  const pressShare = (time: number) => Math.max(0, 1 + (time - lead) / pressTime)
  const pose = (time: number) =>
    time < lead ? poseAt(press, pressShare(time)) : poseAt(flight, Math.min(1, (time - lead) / flightTime))
  const boardAt = (time: number) =>
    time < lead
      ? pushed(pressShare(time))
      : -0.12 * Math.exp(-3 * (time - lead)) * Math.sin(2 * Math.PI * 2.6 * (time - lead))
  /** Under water the body slows, as a share of how far it would have gone. */
  const sunk = (after: number) => (truth.entrySpeed / 2.2) * (1 - Math.exp(-2.2 * after))
  const centreAt = (time: number): Place => {
    const air = Math.min(time - lead, flightTime)
    const y = leaves.y + speed * air - (gravity * air ** 2) / 2
    return { x: leaves.x + away * air, y: y - sunk(Math.max(0, time - lead - flightTime)) }
  }
  return {
    takeOff: lead,
    entry: lead + flightTime,
    length: lead + flightTime + tail,
    truth,
    poseAt: pose,
    boardAt,
    figureAt: (time) =>
      time < lead
        ? figureAt(pose(time), facing, 'toe', { x: tip.x, y: tip.y - boardAt(time) })
        : figureAt(pose(time), facing, 'centre', centreAt(time)),
  }
}
