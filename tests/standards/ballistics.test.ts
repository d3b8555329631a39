import { describe, expect, it } from 'vitest'
import { armAngle, clockHour } from '@/lib/assessment/measure/angles'
import { entryFor, levelDrop, measureFlight, riseFor, speedFor, timeFor } from '@/lib/assessment/measure/flight'
import { exactly, seenAt } from '@/lib/assessment/measure/measured'
import { asksToCheck, plausibleFlight } from '@/lib/assessment/measure/plausible'

const frame = 1 / 60

describe('take-offs from 3 m', () => {
  // Miller and Munro 1985, Int. J. Sport Biomechanics 1(4):288, abstract: one Olympic champion, forward and reverse take-offs
  // from 3 m: vertical take-off speed 5.0 to 6.0 m/s; touchdown from the hurdle at 4.3 to 4.5 m/s.
  it.each([5, 6])('finds a published take-off speed of %d m/s again from the time that it gives', (speed) => {
    const time = timeFor(speed, 3)
    const found = measureFlight({ takeOff: seenAt(2, frame), entry: seenAt(2 + time, frame), drop: levelDrop(3) })
    expect(found.takeOffSpeed.value).toBeCloseTo(speed, 6)
    expect(found.takeOffSpeed.high - found.takeOffSpeed.low).toBeLessThan(0.5)
    const range = plausibleFlight(3)
    for (const key of ['time', 'takeOffSpeed', 'rise', 'entrySpeed'] as const)
      expect(range && asksToCheck(found[key], range[key])).toBe(false)
  })

  it('lets a hurdle fall from about a metre, as the published touchdown speeds ask', () => {
    expect(riseFor(4.3)).toBeCloseTo(0.942, 3)
    expect(riseFor(4.5)).toBeCloseTo(1.032, 3)
  })
})

describe('speed at the water', () => {
  // Jones 2017, as quoted in Orthopedics This Week, 5 Dec 2017: mean peak speed 8.4 m/s from 1 m. It is the speed at the water's
  // surface, a fall of the centre of mass of 3.6 m (some 1.1 m over the board and 1.5 m of rise), not that at the hands' entry.
  it('is the published 8.4 m/s after a fall of 3.6 m', () => {
    expect(entryFor(0, 3.6)).toBeCloseTo(8.4, 1)
    expect(entryFor(Math.sqrt(2 * 9.81 * 1.5), 2.1)).toBeCloseTo(8.4, 1)
  })

  // Free fall, sqrt(2gh) with g = 9.81: any physics textbook.
  it.each([
    [1, 4.43],
    [3, 7.67],
    [5, 9.9],
    [10, 14.01],
  ])('from rest at %d m is %d m/s', (height, speed) => {
    expect(entryFor(0, height)).toBeCloseTo(speed, 2)
  })
})

// Rows worked by hand from the equations of uniform acceleration, g = 9.81.
describe.each([
  [4, 0.815, 1.016, 5.97, 1.2897, 8.65],
  [4.5, 1.032, 1.102, 6.31, 1.365, 8.89],
  [5, 1.274, 1.191, 6.68, 1.4432, 9.16],
  [6, 1.835, 1.372, 7.46, 1.604, 9.74],
])('a take-off at %d m/s', (speed, rise, low, lowEntry, high, highEntry) => {
  it('rises, flies and enters as uniform acceleration says', () => {
    expect(riseFor(speed)).toBeCloseTo(rise, 2)
    for (const [height, time, entry] of [
      [1, low, lowEntry],
      [3, high, highEntry],
    ] as const) {
      expect(timeFor(speed, height)).toBeCloseTo(time, 3)
      expect(entryFor(speed, height)).toBeCloseTo(entry, 1)
      expect(speedFor(timeFor(speed, height), height)).toBeCloseTo(speed, 9)
    }
  })
})

describe('the clock face', () => {
  // Common practice, no published source: seen from the side, hands belong at twelve, and each hour short is 30°.
  it('reads arms one clock hour early as 30° from the vertical', () => {
    const shoulder = { x: 400, y: 300 }
    const early = { x: 400 - 100 * Math.sin(Math.PI / 6), y: 300 - 100 * Math.cos(Math.PI / 6) }
    const arm = armAngle(shoulder, early, { up: exactly(0), pixel: 1 })
    expect(arm.value).toBeCloseTo(-30, 9)
    expect(clockHour(arm.value)).toBeCloseTo(11, 9)
  })

  it.each([
    [0, 12],
    [30, 1],
    [90, 3],
    [180, 6],
    [-30, 11],
    [-180, 6],
    [-90, 9],
  ])('%d° is the hour %d', (degrees, hour) => {
    expect(clockHour(degrees)).toBe(hour)
  })
})
