import fc from 'fast-check'
import { expect, it } from 'vitest'
import { places } from '../place'
import { pairKey, splitPairKey } from './curriculum'

it('splits a pair key into what was joined, whatever a skill is called', () => {
  const unit = fc.constantFrom('@', '1', 'm', 'C', '-')
  fc.assert(
    fc.property(fc.string({ unit, minLength: 1 }), fc.constantFrom(...places), (skill, place) => {
      expect(splitPairKey(pairKey({ skill, place }))).toEqual({ skill, place })
    }),
    { seed: 2_207 },
  )
})

it('splits the key of a place that the edition has not', () => {
  expect(splitPairKey('101C@1m')).toEqual({ skill: '101C', place: '1m' })
  const elsewhere = '101C@quarry' as Parameters<typeof splitPairKey>[0]
  expect(splitPairKey(elsewhere)).toEqual({ skill: '101C', place: 'quarry' })
})
