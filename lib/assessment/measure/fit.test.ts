import { describe, expect, it } from 'vitest'
import { placeFrom, placementFor } from '@/app/_components/domain/compare/fit'
import { placeOf } from '@/app/_components/domain/compare/placement'
import { tell } from '@/seed/clips/dive'
import { clips } from '@/seed/clips/dives'
import { cameraFor, cord, staff } from '@/seed/clips/draw'
import { type Place, seen } from '@/seed/clips/figure'
import { fitsOf } from './fit'
import type { OnFrames } from './taken'

/** A measure of the distance, and one of the tilt, with each point where it truly is in the film. */
function measured(name: string) {
  const clip = clips.find((one) => one.name === name)
  if (!clip) throw new Error(`there is no clip ${name}`)
  const { height } = clip.simulated
  const camera = cameraFor(height, clip.cameraTilt)
  const told = tell(clip.simulated)
  const at = (place: Place) => seen(place, camera)
  const [bottom, top] = cord(height)
  const figure = told.figureAt(told.takeOff)
  const rest = { frames: [], down: false, pixel: 1.5 }
  const distance: OnFrames = {
    ...rest,
    kind: 'distance',
    upright: 'plumb',
    metres: 1,
    points: {
      tip: at({ x: 0, y: height }),
      near: at(figure.head),
      'length from': at(staff[0]),
      'length to': at(staff[1]),
      'plumb top': at(top),
      'plumb bottom': at(bottom),
    },
  }
  const tilt: OnFrames = {
    ...rest,
    kind: 'tilt',
    upright: 'picture',
    metres: null,
    points: { ankle: at(figure.ankle), hip: at(figure.hip) },
  }
  return { at, height, distance, tilt, figure }
}

const size = { width: 720, height: 540 }
const sizes = { first: size, second: size }

describe('one picture laid over another', () => {
  it.each([
    ['101b-sound', '101b-arms-short'],
    ['401b-open-pike', '401b-leaning'],
    ['101b-sound', '201a-arched'],
  ])('has board and water of %s and %s where they belong, whatever the cameras', (one, other) => {
    const [first, second] = [measured(one), measured(other)]
    const fits = fitsOf([first.distance, first.tilt], [second.distance, second.tilt])
    expect(fits.map(({ place }) => place)).toEqual(['tip', 'hip'])
    const lies = placementFor(fits, 'tip', sizes, false)
    // Places by their distance from the tip, which is as high over the water as its board.
    for (const [x, down] of [
      [0, 0],
      [-1.2, 0],
      [0.8, 1],
    ] as const) {
      const there = placeOf(lies, second.at({ x, y: second.height - down }))
      const here = first.at({ x, y: first.height - down })
      expect(there.x).toBeCloseTo(here.x, 3)
      expect(there.y).toBeCloseTo(here.y, 3)
    }
  })

  it('has hips on hips, also turned round', () => {
    const [first, second] = [measured('101b-sound'), measured('401b-leaning')]
    const fits = fitsOf([first.distance, first.tilt], [second.tilt, second.distance])
    const lies = placementFor(fits, 'hip', sizes, true)
    const [hip, here] = [placeOf(lies, second.at(second.figure.hip)), first.at(first.figure.hip)]
    expect(hip.x).toBeCloseTo(here.x, 6)
    expect(hip.y).toBeCloseTo(here.y, 6)
    // Up stays up: a metre over the hip of the second lies a metre over that of the first.
    const over = placeOf(lies, second.at({ x: second.figure.hip.x, y: second.figure.hip.y + 1 }))
    const there = first.at({ x: first.figure.hip.x, y: first.figure.hip.y + 1 })
    expect(over.x).toBeCloseTo(there.x, 3)
    expect(over.y).toBeCloseTo(there.y, 3)
  })

  it('is by hand where nothing was placed in both', () => {
    const [first, second] = [measured('101b-sound'), measured('101b-arms-short')]
    expect(fitsOf([first.distance], [second.tilt])).toEqual([])
    expect(fitsOf([first.tilt], [second.tilt])).toMatchObject([
      { place: 'hip', scale: null, up: { first: 0, second: 0 } },
    ])
    const hips = fitsOf([first.tilt], [second.tilt])
    expect([placeFrom(hips, 'tip'), placeFrom(hips, 'middle'), placeFrom([], 'hip')]).toEqual([
      'hip',
      'middle',
      'middle',
    ])
    expect(placementFor([], 'tip', sizes, false)).toMatchObject({ scale: 1, turn: 0, to: { x: 360, y: 270 } })
  })
})
