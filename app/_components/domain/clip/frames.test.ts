import { describe, expect, it } from 'vitest'
import { frameTimeOf, isPast, saySpeed, seekFor, speeds } from './frames'

const frames = (rate: number, which: readonly number[]) => which.map((frame) => frame / rate)

describe('frameTimeOf', () => {
  it('takes the shortest step, since a player passes frames over', () => {
    expect(frameTimeOf(frames(60, [0, 2, 3, 5, 6]))).toBeCloseTo(1 / 60, 9)
    expect(frameTimeOf(frames(30, [0, 1, 2, 3]))).toBeCloseTo(1 / 30, 9)
  })

  it('does not guess from too few, nor from a step back', () => {
    expect(frameTimeOf(frames(60, [0, 1, 2]))).toBeNull()
    expect(frameTimeOf([])).toBeNull()
    expect(frameTimeOf(frames(30, [90, 91, 92, 0, 1, 2]))).toBeCloseTo(1 / 30, 9)
  })
})

describe('seekFor', () => {
  it.each([24, 25, 30, 50, 60, 120, 240])('falls inside the neighbouring frame at %d a second', (rate) => {
    for (let frame = 1; frame < 200; frame++) {
      const middle = (by: 1 | -1) => Math.floor(seekFor(frame / rate, by, 1 / rate, 0) * rate)
      expect(middle(1)).toBe(frame + 1)
      expect(middle(-1)).toBe(frame - 1)
    }
  })

  it('reaches over a longer frame, and never before the film', () => {
    expect(seekFor(1, 1, 1 / 60, 1)).toBeGreaterThan(1 + 1 / 30)
    expect(seekFor(0, -1, 1 / 60, 0)).toBe(0)
  })
})

describe('a range', () => {
  it('ends before its end, and never without one', () => {
    expect(isPast(2.5, 2.5)).toBe(true)
    expect(isPast(2.48, 2.5)).toBe(false)
    expect(isPast(99, null)).toBe(false)
  })

  it('plays down to an eighth', () => {
    expect(speeds.map(saySpeed)).toEqual(['full speed', '1/2', '1/4', '1/8'])
  })
})
