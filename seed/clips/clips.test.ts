import { readdirSync, statSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { armAngle, bodyTilt, hipAngle, type Reading, rotationRate } from '@/lib/assessment/measure/angles'
import { distanceFromTip, heightOverTip, passesBoard, waterSide } from '@/lib/assessment/measure/distance'
import { measureByPeak, measureFlight } from '@/lib/assessment/measure/flight'
import { happenedBefore, type Measured, seenAt, wrap } from '@/lib/assessment/measure/measured'
import { type Point, scaleOf, uprightOf } from '@/lib/assessment/measure/picture'
import { asksToCheck, plausible, plausibleFlight } from '@/lib/assessment/measure/plausible'
import { tell } from './dive'
import { clips } from './dives'
import { cameraFor, cord, frameCount, staff } from './draw'
import { centreOf, type Place, seen } from './figure'
import { clipLinks } from './links'

const pixel = 1.5

/** A coach who places each point where it truly is, on a film with so many frames a second. */
function coach(clip: (typeof clips)[number], rate: number) {
  const told = tell(clip.simulated)
  const { height, facing } = clip.simulated
  const camera = cameraFor(height, clip.cameraTilt)
  const at = (place: Place): Point => seen(place, camera)
  const [bottom, top] = cord(height)
  const reading: Reading = { up: uprightOf({ kind: 'plumb', bottom: at(bottom), top: at(top) }, pixel), pixel }
  const scale = scaleOf({ from: at(staff[0]), to: at(staff[1]), metres: 1 }, pixel)
  /** The first frame at or after a time, and when it is. */
  const frameOf = (time: number) => Math.ceil(time * rate) / rate
  const points = (time: number) => {
    const figure = told.figureAt(time)
    return {
      ankle: at(figure.ankle),
      hip: at(figure.hip),
      shoulder: at(figure.shoulder),
      head: at(figure.head),
      hand: at(figure.hand),
    }
  }
  const trunk = (time: number) => facing * told.poseAt(time).trunk
  return { told, reading, scale, at, frameOf, points, trunk, facing, height, frame: 1 / rate }
}

const expectHolds = ({ low, high }: Measured, truth: number) => {
  expect(low).toBeLessThanOrEqual(truth)
  expect(high).toBeGreaterThanOrEqual(truth)
}

describe.each(clips)('$name: $shows', (clip) => {
  it.each([240, 60, 30, 25])('gives back the true flight at %d frames a second', (rate) => {
    const { told, frameOf, frame, height } = coach(clip, rate)
    const [takeOff, entry] = [seenAt(frameOf(told.takeOff), frame), seenAt(frameOf(told.entry), frame)]
    const found = measureFlight({ takeOff, entry, drop: { value: told.truth.drop, sd: 0.01 } })
    expectHolds(found.time, told.truth.flightTime)
    expectHolds(found.takeOffSpeed, clip.simulated.speed)
    expectHolds(found.rise, told.truth.rise)
    expectHolds(found.entrySpeed, told.truth.entrySpeed)
    const range = plausibleFlight(height)
    expect(range && asksToCheck(found.time, range.time)).toBe(false)
    const top = Math.round((told.takeOff + clip.simulated.speed / 9.81) / frame) * frame
    const happened = { takeOff: happenedBefore(takeOff.value, frame), entry: happenedBefore(entry.value, frame) }
    const byPeak = measureByPeak(happened, { value: top, sd: 0.03 })
    expectHolds(byPeak.takeOffSpeed, clip.simulated.speed)
    expectHolds(byPeak.drop, told.truth.drop)
  })

  it('gives back the true line at take-off and entry, with the camera askew', () => {
    const { told, reading, points, trunk, frameOf } = coach(clip, clip.rate)
    for (const time of [told.takeOff, frameOf(told.entry)]) {
      const { ankle, hip, shoulder, head, hand } = points(time)
      const tilt = bodyTilt([ankle, hip, shoulder, head], reading)
      expectHolds(tilt, wrap(trunk(time), 180))
      expect(tilt.value).toBeCloseTo(wrap(trunk(time), 180), 6)
      expect(asksToCheck(tilt, plausible.bodyTilt)).toBe(false)
      expect(armAngle(shoulder, hand, reading, time > told.takeOff).value).toBeCloseTo(tilt.value, 6)
    }
  })

  it('gives back the true arms, hip angle, distance and turn on each frame of the press and the flight', () => {
    const { told, reading, scale, points, trunk, at, facing, height, frame } = coach(clip, clip.rate)
    const times = Array.from({ length: frameCount(told.entry, clip.rate) }, (_, index) => index / clip.rate)
    for (const [index, time] of times.entries()) {
      const { hip, shoulder, head, hand, ankle } = points(time)
      const pose = told.poseAt(time)
      const arms = armAngle(shoulder, hand, reading)
      // Arms that hang lie at the seam of the circle.
      expectHolds(arms, arms.value + wrap(trunk(time) + facing * pose.arm - arms.value, 360))
      if (pose.knee === 0) expectHolds(hipAngle(shoulder, hip, ankle, pixel), 180 - Math.abs(pose.hip))
      const [tip, board] = [at({ x: 0, y: height }), at({ x: -1, y: height })]
      const side = waterSide(board, tip, reading.up, 5 * pixel)
      expect(side).toBe(1)
      const { x, y } = told.figureAt(time).head
      if (side) expectHolds(distanceFromTip(tip, head, side, reading, scale), x)
      expectHolds(heightOverTip(tip, head, reading, scale), y - height)
      const before = times[index - 6]
      if (before === undefined) continue
      const earlier = { ...points(before), reading, time: seenAt(before, frame) }
      const rate = rotationRate(earlier, { hip, shoulder, reading, time: seenAt(time, frame) })
      expectHolds(rate, (trunk(time) - trunk(before)) / (time - before))
      expect(asksToCheck(rate, plausible.rotationRate)).toBe(false)
    }
  })

  it('has a frame at least in which the head passes the level of the board, and all such read the same distance', () => {
    const { told, height } = coach(clip, 25)
    const down = Array.from({ length: 2000 }, (_, index) => told.takeOff + 0.001 * index)
      .filter((time) => time > told.takeOff + clip.simulated.speed / 9.81 && time < told.entry)
      .map((time) => ({ time, ...told.figureAt(time).head }))
    const passing = down.filter(({ y }) => passesBoard(y - height))
    const level = down.find(({ y }) => y <= height)
    const times = passing.map(({ time }) => time)
    expect(Math.max(...times) - Math.min(...times)).toBeGreaterThan(1 / 25)
    for (const { x } of passing) expect(Math.abs(x - (level?.x ?? Number.NaN))).toBeLessThan(0.11)
  })

  it('lets the centre of mass fall freely, and nothing jump', () => {
    const { told } = coach(clip, clip.rate)
    const height = (time: number) => centreOf(told.figureAt(time)).y
    const step = 0.01
    for (let time = told.takeOff + step; time < told.entry - step; time += step) {
      const fall = (height(time + step) - 2 * height(time) + height(time - step)) / step ** 2
      expect(fall).toBeCloseTo(-9.81, 4)
    }
    expect(Math.min(told.figureAt(told.entry).hand.y, 1)).toBeCloseTo(0, 9)
    for (let time = 1 / 60; time < told.length; time += 1 / 60) {
      const [one, other] = [told.figureAt(time - 1 / 60), told.figureAt(time)]
      expect(Math.hypot(one.hip.x - other.hip.x, one.hip.y - other.hip.y)).toBeLessThan(0.25)
    }
  })
})

describe('the faults', () => {
  const named = (name: string) => {
    const clip = clips.find((one) => one.name === name)
    if (!clip) throw new Error(`there is no clip ${name}`)
    return coach(clip, clip.rate)
  }

  it('show in the measures as a coach would call them', () => {
    // The board bottoms at 0.7 of a press of 0.7 s: 0.21 s before the take-off.
    const early = named('101b-arms-short')
    const sound = named('101b-sound')
    const arms = (of: typeof early) => {
      const { shoulder, hand } = of.points(of.told.takeOff - 0.21)
      return armAngle(shoulder, hand, of.reading).value
    }
    expect(arms(early) - arms(sound)).toBeCloseTo(30, 0)
    const open = named('401b-open-pike')
    const middle = open.told.takeOff + 0.39 * open.told.truth.flightTime
    const { shoulder, hip, ankle } = open.points(middle)
    expect(hipAngle(shoulder, hip, ankle, pixel).value).toBeCloseTo(180 - 132 + 38, 0)
  })
})

describe('what there is to compare', () => {
  it.each(['101B', '401B', '201A'])('is %s from each board, sound and with what was wrong before', (dive) => {
    for (const height of [1, 3])
      expect(new Set(clipLinks(dive, height).map(({ sound }) => sound))).toEqual(new Set([true, false]))
    const [low, high] = [1, 3].map((height) => {
      const sound = clips.find((one) => one.dive === dive && one.sound && one.simulated.height === height)
      return sound ? tell(sound.simulated).truth.flightTime : Number.NaN
    })
    expect((high ?? 0) - (low ?? 0)).toBeGreaterThan(0.2)
  })

  it('is one film of a slower camera', () => {
    expect(clips.filter(({ rate }) => rate === 30).map(({ name }) => name)).toEqual(['201a-1m-short'])
  })
})

describe('the films', () => {
  const folder = new URL('../../public/media/clips/', import.meta.url)

  it('are kept beside each other, one for each clip, none over 300 kB', () => {
    expect(readdirSync(folder).sort()).toEqual(clips.map(({ name }) => `${name}.webm`).sort())
    for (const { name } of clips) expect(statSync(new URL(`${name}.webm`, folder)).size).toBeLessThan(300_000)
  })

  it('are linked with the range that shows the dive', () => {
    const [sound] = clipLinks('101B', 1)
    expect(sound).toEqual({
      link: '/media/clips/101b-sound.webm',
      start: 0.3,
      end: 2.6,
      sound: true,
      shows: 'a sound forward dive, pike, from 1 m',
    })
    expect(clipLinks('105B', 1)).toEqual([])
    expect(clipLinks('101B', null)).toEqual([])
  })
})
