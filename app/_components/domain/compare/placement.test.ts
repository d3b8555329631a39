import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { middleOnMiddle, moved, type Placement, placeOf, styleOf } from './placement'

const first = { width: 720, height: 540 }
const second = { width: 1920, height: 1080 }
const point = fc.record({ x: fc.integer({ min: 0, max: 2000 }), y: fc.integer({ min: 0, max: 2000 }) })
const placement: fc.Arbitrary<Placement> = fc.record({
  from: point,
  to: point,
  scale: fc.double({ min: 0.1, max: 5, noNaN: true }),
  turn: fc.double({ min: -20, max: 20, noNaN: true }),
  mirrored: fc.boolean(),
})
const runs = { seed: 26, numRuns: 300 }

describe('how one picture lies on another', () => {
  it('brings the point to its point, and keeps lengths but for the scale', () => {
    fc.assert(
      fc.property(placement, point, (lies, other) => {
        const [at, there] = [placeOf(lies, lies.from), placeOf(lies, other)]
        expect(at).toEqual(lies.to)
        const length = Math.hypot(other.x - lies.from.x, other.y - lies.from.y)
        expect(Math.hypot(there.x - at.x, there.y - at.y)).toBeCloseTo(length * lies.scale, 6)
      }),
      runs,
    )
  })

  it('is written for a style sheet as it is worked out', () => {
    fc.assert(
      fc.property(placement, point, (lies, at) => {
        const { transform } = styleOf(lies, first, second)
        const numbers = [...transform.matchAll(/-?\d+(\.\d+)?(e-?\d+)?/g)].map(([text]) => Number(text))
        const [x, y, turn, across, down] = numbers as [number, number, number, number, number]
        const [right, below] = [at.x * across, at.y * down]
        const angle = (turn * Math.PI) / 180
        const expected = placeOf(lies, at)
        expect((x / 100) * second.width + right * Math.cos(angle) - below * Math.sin(angle)).toBeCloseTo(expected.x, 0)
        expect((y / 100) * second.height + right * Math.sin(angle) + below * Math.cos(angle)).toBeCloseTo(expected.y, 0)
      }),
      runs,
    )
  })

  it('puts middles together where nothing is known, and moves by hand from there', () => {
    const lies = middleOnMiddle(first, second, true)
    expect(placeOf(lies, { x: 960, y: 540 })).toEqual({ x: 360, y: 270 })
    expect(placeOf(lies, { x: 960, y: 0 }).y).toBe(0)
    expect(placeOf(lies, { x: 1060, y: 540 }).x).toBeLessThan(360)
    expect(moved(lies, { x: 0, y: 0, size: 1 }, first)).toEqual(lies)
    const larger = moved(lies, { x: 0.1, y: -0.1, size: 2 }, first)
    expect(larger).toMatchObject({ to: { x: 432, y: 198 }, scale: 1 })
  })
})
