import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seeded } from '@/tests/support/seeded'
import { angleTurned, armAngle, bodyTilt, hipAngle, type Reading, rotationRate } from './angles'
import { distanceFromTip, heightOverTip, waterSide } from './distance'
import { levelDrop, measureByPeak, measureFlight, timeFor } from './flight'
import { exactly, type Measured, seenAt } from './measured'
import { type Point, scaleOf, type Upright, uprightOf } from './picture'

/** What a coach places on a frame, and the lines that tell it how to be read. */
interface Placing {
  readonly body: readonly [ankle: Point, hip: Point, shoulder: Point, head: Point, hand: Point]
  readonly tip: Point
  readonly plumb: readonly [bottom: Point, top: Point]
  readonly known: readonly [Point, Point]
}

const pixel = 2

const frame = (placing: Placing): Reading => ({
  up: uprightOf({ kind: 'plumb', bottom: placing.plumb[0], top: placing.plumb[1] }, pixel),
  pixel,
})

/** Everything that one frame gives. */
function measureAll({ body: [ankle, hip, shoulder, head, hand], ...placing }: Placing): readonly Measured[] {
  const reading = frame({ body: [ankle, hip, shoulder, head, hand], ...placing })
  const scale = scaleOf({ from: placing.known[0], to: placing.known[1], metres: 1 }, pixel)
  return [
    bodyTilt([ankle, hip, shoulder, head], reading),
    armAngle(shoulder, hand, reading),
    hipAngle(shoulder, hip, ankle, pixel),
    distanceFromTip(placing.tip, head, 1, reading, scale),
  ]
}

/** The same placing with each point moved. */
function moved(placing: Placing, move: (point: Point) => Point): Placing {
  const [ankle, hip, shoulder, head, hand] = placing.body
  return {
    body: [move(ankle), move(hip), move(shoulder), move(head), move(hand)],
    tip: move(placing.tip),
    plumb: [move(placing.plumb[0]), move(placing.plumb[1])],
    known: [move(placing.known[0]), move(placing.known[1])],
  }
}

/** A leaning diver with an open pike, arms short of twelve, half a metre from the tip; 200 pixels are a metre. */
const diver: Placing = {
  body: [
    { x: 500, y: 520 },
    { x: 530, y: 360 },
    { x: 580, y: 260 },
    { x: 600, y: 220 },
    { x: 655, y: 160 },
  ],
  tip: { x: 480, y: 540 },
  plumb: [
    { x: 900, y: 700 },
    { x: 912, y: 100 },
  ],
  known: [
    { x: 100, y: 540 },
    { x: 300, y: 540 },
  ],
}

const point = fc.record({
  x: fc.double({ min: 0, max: 1280, noNaN: true }),
  y: fc.double({ min: 0, max: 720, noNaN: true }),
})
/** A film is not upside down: a plumb line stands within 40° of the picture's own upright, from its bottom to its top. */
const plumb = fc
  .record({ at: point, lean: fc.double({ min: -40, max: 40, noNaN: true }), length: fc.integer({ min: 61, max: 600 }) })
  .map(({ at, lean, length }): Placing['plumb'] => {
    const radians = (lean * Math.PI) / 180
    return [at, { x: at.x + length * Math.sin(radians), y: at.y - length * Math.cos(radians) }]
  })
const placings = fc
  .record({
    body: fc.tuple(point, point, point, point, point),
    tip: point,
    plumb,
    known: fc.tuple(point, point),
  })
  .filter(({ body, plumb, known }) => {
    const far = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) > 60
    const [ankle, hip, shoulder, , hand] = body
    return [[ankle, hip], [hip, shoulder], [shoulder, hand], plumb, known].every(([a, b]) => a && b && far(a, b))
  })

/** Angles wrap: one that lies at the seam may come out at its other end. */
function expectSame(before: readonly Measured[], after: readonly Measured[], factor = 1) {
  const periods = [180, 360, Infinity, Infinity]
  before.forEach((one, index) => {
    const other = after[index]
    const period = periods[index] ?? Infinity
    const apart = Math.abs(one.value - (other?.value ?? NaN))
    expect(Math.min(apart, period - apart)).toBeLessThan(1e-5)
    expect((other?.sd ?? NaN) * factor).toBeCloseTo(one.sd, 4)
  })
}

describe('a measure', () => {
  const runs = { seed: 6, numRuns: 300 }

  it('does not change when the picture is moved', () => {
    fc.assert(
      fc.property(placings, point, (placing, by) => {
        const shifted = moved(placing, ({ x, y }) => ({ x: x + by.x, y: y + by.y }))
        expectSame(measureAll(placing), measureAll(shifted))
      }),
      runs,
    )
  })

  it('does not change when the picture turns with its plumb line', () => {
    fc.assert(
      fc.property(placings, fc.double({ min: -0.8, max: 0.8, noNaN: true }), (placing, turn) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)]
        const turned = moved(placing, ({ x, y }) => ({ x: c * x - s * y, y: s * x + c * y }))
        const [before, after] = [measureAll(placing), measureAll(turned)]
        // The line closest to points that have no line turns over at the least error: its angle is then no measure.
        const held = before.map((one, index) => (index === 0 && one.sd > 30 ? (after[0] ?? one) : one))
        expectSame(held, after)
      }),
      runs,
    )
  })

  it('does not change when the picture and the error grow with the known length', () => {
    fc.assert(
      fc.property(placings, fc.double({ min: 1, max: 4, noNaN: true }), (placing, by) => {
        const grown = moved(placing, ({ x, y }) => ({ x: by * x, y: by * y }))
        measureAll(placing).forEach((one, index) => {
          const other = measureAll(grown)[index]
          expect(other?.value).toBeCloseTo(one.value, 6)
          expect(other?.sd ?? NaN).toBeLessThanOrEqual(one.sd * 1.001)
        })
      }),
      runs,
    )
  })

  it('knows itself less well when frames are fewer', () => {
    const rates = [240, 120, 60, 30, 25]
    const flights = rates.map((rate) =>
      measureFlight({ takeOff: seenAt(1, 1 / rate), entry: seenAt(2.3, 1 / rate), drop: levelDrop(3) }),
    )
    const turns = rates.map((rate) => turn(diver, 0.1, 1 / rate))
    const spreads = [
      ...(['time', 'takeOffSpeed', 'rise', 'entrySpeed'] as const).map((key) => flights.map((one) => one[key].sd)),
      turns.map(({ sd }) => sd),
    ]
    for (const grows of spreads)
      grows.slice(1).forEach((sd, index) => {
        expect(sd).toBeGreaterThan(grows[index] ?? NaN)
      })
  })

  it('straightens the camera by a board at rest as by a plumb line', () => {
    const tilted: Upright = { kind: 'level', left: { x: 0, y: 0 }, right: { x: 400, y: 400 * Math.tan(Math.PI / 36) } }
    expect(uprightOf(tilted, pixel).value).toBeCloseTo(5, 9)
    expect(uprightOf({ kind: 'picture', sd: 1 }, pixel)).toEqual({ value: 0, sd: 1 })
  })

  it('takes the ends of an upright by where they lie, whatever they were called', () => {
    const [high, low] = [
      { x: 912, y: 100 },
      { x: 900, y: 700 },
    ]
    const plumb = uprightOf({ kind: 'plumb', top: high, bottom: low }, pixel)
    expect(plumb.value).toBeCloseTo(1.15, 2)
    expect(uprightOf({ kind: 'plumb', top: low, bottom: high }, pixel)).toEqual(plumb)
    const [left, right] = [
      { x: 20, y: 400 },
      { x: 320, y: 410 },
    ]
    const level = uprightOf({ kind: 'level', left, right }, pixel)
    expect(level.value).toBeCloseTo(1.91, 2)
    expect(uprightOf({ kind: 'level', left: right, right: left }, pixel)).toEqual(level)
  })

  it('tells by a point on the board which side is the water, the camera askew or not', () => {
    const tip = { x: 300, y: 300 }
    const side = (x: number, y: number, up = 0) => waterSide({ x, y }, tip, exactly(up), 10)
    expect([side(200, 300), side(400, 300), side(220, 375), side(220, 385)]).toEqual([1, -1, 1, null])
    expect([side(291, 300), side(290, 300), side(300, 200)]).toEqual([null, 1, null])
    // A camera that leans by 30°: the board runs down to the left of the picture.
    expect([side(213, 250, 30), side(387, 350, 30), side(350, 213, 30)]).toEqual([1, -1, null])
  })

  it('of a distance is over the water above nought and over the board below it, from either side', () => {
    const reading: Reading = { up: exactly(0), pixel: 0 }
    const from = (x: number, side: 1 | -1) =>
      distanceFromTip({ x: 300, y: 300 }, { x, y: 260 }, side, reading, exactly(0.01)).value
    expect(
      [from(380, 1), from(220, 1), from(220, -1), from(380, -1)].map((one) => Math.round(one * 100) / 100),
    ).toEqual([0.8, -0.8, 0.8, -0.8])
    const height = (y: number) => heightOverTip({ x: 300, y: 300 }, { x: 380, y }, reading, exactly(0.01)).value
    expect([height(260), height(402)].map((one) => Math.round(one * 100) / 100)).toEqual([0.4, -1.02])
  })

  it('of a turn knows how far it went, up to half a turn', () => {
    const trunk = (degrees: number, seconds: number) => {
      const [x, y] = [Math.sin((degrees * Math.PI) / 180), -Math.cos((degrees * Math.PI) / 180)]
      const reading: Reading = { up: exactly(0), pixel: 1 }
      return { hip: { x: 0, y: 0 }, shoulder: { x: 100 * x, y: 100 * y }, reading, time: seenAt(seconds, 1 / 60) }
    }
    expect(angleTurned(trunk(10, 1), trunk(150, 1.4)).value).toBeCloseTo(140, 9)
    expect(angleTurned(trunk(0, 1), trunk(216, 1.4)).value).toBeCloseTo(-144, 9)
    expect(rotationRate(trunk(0, 1), trunk(216, 1.4)).value).toBeCloseTo(-360, 6)
    // Placing four points within a pixel, each 100 pixels from its other: 1° and a little.
    expect(angleTurned(trunk(0, 1), trunk(90, 1.4)).sd).toBeCloseTo((2 * 180) / Math.PI / 100, 1)
  })

  it('reads angles as a coach draws them', () => {
    const reading: Reading = { up: exactly(0), pixel: 0 }
    const at = (x: number, y: number): Point => ({ x, y })
    expect(bodyTilt([at(0, 0), at(10, -100)], reading).value).toBeCloseTo(5.7106, 4)
    expect(bodyTilt([at(10, -100), at(0, 0)], reading).value).toBeCloseTo(5.7106, 4)
    expect(armAngle(at(0, 0), at(10, 100), reading, true).value).toBeCloseTo(-5.7106, 4)
    expect(hipAngle(at(100, 0), at(0, 0), at(0, 100), 0).value).toBeCloseTo(90, 9)
    expect(hipAngle(at(0, -100), at(0, 0), at(0, 100), 1)).toMatchObject({ value: 180, high: 180 })
  })

  it('refuses what cannot be measured', () => {
    const reading: Reading = { up: exactly(0), pixel: 1 }
    expect(() => bodyTilt([{ x: 0, y: 0 }], reading)).toThrow('two points')
    expect(() => scaleOf({ from: { x: 1, y: 1 }, to: { x: 1, y: 1 }, metres: 1 }, 1)).toThrow('same point')
    expect(() => scaleOf({ from: { x: 1, y: 1 }, to: { x: 2, y: 1 }, metres: 0 }, 1)).toThrow('longer than nothing')
    expect(() => measureFlight({ takeOff: exactly(2), entry: exactly(2), drop: levelDrop(1) })).toThrow('later')
    expect(() => measureByPeak({ takeOff: exactly(1), entry: exactly(2) }, exactly(2))).toThrow('between')
    expect(() => turn(diver, 0, 0.1)).toThrow('later')
  })
})

function turn(placing: Placing, after: number, frameTime: number): Measured {
  const [, hip, shoulder] = placing.body
  const later = { x: hip.x + 110, y: hip.y + 10 }
  const reading = frame(placing)
  const first = { hip, shoulder, reading, time: seenAt(1, frameTime) }
  return rotationRate(first, { hip, shoulder: later, reading, time: seenAt(1 + after, frameTime) })
}

describe('the 95 % interval', () => {
  const placings = 10_000
  const { uniform, normal } = seeded(20_260)
  const blur = ({ x, y }: Point): Point => ({ x: x + normal(pixel), y: y + normal(pixel) })
  /** Something that happens at `time` is first seen in a frame that begins within one frame's time, wherever frames fall. */
  const caught = (time: number, frameTime: number) => seenAt(time + (uniform() - 0.5) * frameTime, frameTime)

  function coverage(truth: number, measure: () => Measured): number {
    const held = Array.from({ length: placings }, measure).filter(({ low, high }) => low <= truth && truth <= high)
    return held.length / placings
  }
  const expectCovered = (truth: number, measure: () => Measured) => {
    const share = coverage(truth, measure)
    expect(share).toBeGreaterThan(0.93)
    expect(share).toBeLessThan(0.97)
  }

  it.each(['tilt', 'arms', 'hip angle', 'distance'].map((name, index) => [name, index] as const))(
    'covers the true %s in 93 to 97 of 100 noisy placings',
    (_, index) => {
      const truth = measureAll(diver)[index]?.value ?? NaN
      expectCovered(truth, () => measureAll(moved(diver, blur))[index] ?? measureFault())
    },
  )

  const drop = () => ({ value: 3 + normal(0.1), sd: 0.1 })
  it.each(['time', 'takeOffSpeed', 'rise', 'entrySpeed'] as const)('covers the true %s of a flight', (key) => {
    const exact = { takeOff: exactly(1), entry: exactly(1 + timeFor(4.6, 3)), drop: exactly(3) }
    for (const frameTime of [1 / 60, 1 / 30])
      expectCovered(measureFlight(exact)[key].value, () => {
        const [takeOff, entry] = [caught(exact.takeOff.value, frameTime), caught(exact.entry.value, frameTime)]
        return measureFlight({ takeOff, entry, drop: drop() })[key]
      })
  })

  it('covers the true rate of a turn', () => {
    const truth = turn(diver, 0.2, 0).value
    expectCovered(truth, () => {
      const reading = frame(moved(diver, blur))
      const [, hip, shoulder] = diver.body
      const later = { x: hip.x + 110, y: hip.y + 10 }
      return rotationRate(
        { hip: blur(hip), shoulder: blur(shoulder), reading, time: caught(1, 1 / 60) },
        { hip: blur(hip), shoulder: blur(later), reading: frame(moved(diver, blur)), time: caught(1.2, 1 / 60) },
      )
    })
  })
})

function measureFault(): never {
  throw new Error('there is no such measure')
}
