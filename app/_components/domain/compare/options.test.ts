import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CompareOptions, limits, plainly, readOptions, writeOptions } from './options'

const number = (key: keyof typeof limits) => fc.integer({ min: limits[key][0], max: limits[key][1] })
const options: fc.Arbitrary<CompareOptions> = fc.record({
  at: fc.constantFrom(null, 'take-off', 'under water'),
  pace: fc.constantFrom('clock', 'flight', 'phases'),
  view: fc.constantFrom('beside', 'over'),
  mirrored: fc.boolean(),
  place: fc.constantFrom('tip', 'hip', 'middle'),
  points: fc.boolean(),
  strength: number('strength'),
  shift: number('shift'),
  x: number('x'),
  y: number('y'),
  size: number('size'),
})

describe('what the address holds', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(options, (chosen) => {
        expect(readOptions(Object.fromEntries(new URLSearchParams(writeOptions(chosen))))).toEqual(chosen)
      }),
      { seed: 26 },
    )
  })

  it('is short where nothing was chosen, and plain where it means nothing', () => {
    expect(writeOptions(plainly)).toBe('')
    expect(readOptions({})).toEqual(plainly)
    expect(readOptions({ pace: 'warp', view: ['over'], size: 'huge', x: '1e9', shift: '', strength: '-1' })).toEqual({
      ...plainly,
      strength: 0,
    })
    expect(readOptions({ size: '1', shift: '99999' })).toMatchObject({ size: 25, shift: 5000 })
  })
})
