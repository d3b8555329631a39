import { gravity } from '@/lib/assessment/measure/flight'
import { wrap } from '@/lib/assessment/measure/measured'
import type { Point } from '@/lib/assessment/measure/picture'
import { pressTime, tell } from './dive'
import { clips } from './dives'
import { cameraFor, cord, framingOf, staff } from './draw'
import { type Place, seen } from './figure'

/** A film of ours whose dive was simulated: where everything truly is in each frame, in film pixels, and what is true of it. */
export function trueDive(name: string) {
  const clip = clips.find((one) => one.name === name)
  if (!clip) throw new Error(`there is no clip ${name}`)
  const { height, facing, speed } = clip.simulated
  const framing = framingOf(height)
  const told = tell(clip.simulated)
  const camera = cameraFor(height, clip.cameraTilt)
  const at = (place: Place): Point => seen(place, camera)
  const [bottom, top] = cord(height)
  const frameAt = (time: number) => Math.ceil(time * clip.rate)
  const timeOf = (frame: number) => frame / clip.rate
  const trunk = (frame: number) => facing * told.poseAt(timeOf(frame)).trunk
  return {
    link: `/media/clips/${name}.webm`,
    rate: clip.rate,
    size: { width: framing.width, height: framing.height },
    /** Metres of the board above the water. */
    board: height,
    /** The first frame off the board, and the first that touches the water. */
    leaves: frameAt(told.takeOff),
    meets: frameAt(told.entry),
    /** The first frames of what else the film shows: the board pushed down, at its lowest, the highest point, the opening. */
    press: frameAt(told.takeOff - pressTime),
    lowest: frameAt(told.takeOff - 0.3 * pressTime),
    highest: frameAt(told.takeOff + speed / gravity),
    opens: frameAt(told.takeOff + 0.56 * told.truth.flightTime),
    points(frame: number) {
      const { ankle, hip, shoulder, head, hand } = told.figureAt(timeOf(frame))
      return { ankle: at(ankle), hip: at(hip), shoulder: at(shoulder), head: at(head), hand: at(hand) }
    },
    still: {
      tip: at({ x: 0, y: height }),
      'plumb top': at(top),
      'plumb bottom': at(bottom),
      'length from': at(staff[0]),
      'length to': at(staff[1]),
    },
    tilt: (frame: number) => wrap(trunk(frame), 180),
    arms: (frame: number) => wrap(trunk(frame) + facing * told.poseAt(timeOf(frame)).arm, 360),
    hipAngle: (frame: number) => 180 - Math.abs(told.poseAt(timeOf(frame)).hip),
    headFromTip: (frame: number) => Math.abs(told.figureAt(timeOf(frame)).head.x),
    turn: (from: number, to: number) => (trunk(to) - trunk(from)) / (timeOf(to) - timeOf(from)),
    truth: { ...told.truth, speed },
  }
}
