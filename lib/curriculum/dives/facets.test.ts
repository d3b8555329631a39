import { describe, expect, it } from 'vitest'
import { facetsOf } from './facets'
import { parseDive } from './parse'

function facets(number: string) {
  const result = parseDive(number)
  if (!result.ok) throw new Error(result.error.message)
  return facetsOf(result.dive)
}

// World Aquatics DV 2 for the groups; which way a dive faces and turns is common practice, no published source.
describe('facetsOf', () => {
  it.each([
    ['101C', 'forward', 'out', 'forwards', 'head-first', 'front'],
    ['102C', 'forward', 'out', 'forwards', 'feet-first', 'front'],
    ['201B', 'back', 'in', 'backwards', 'head-first', 'back'],
    ['204C', 'back', 'in', 'backwards', 'feet-first', 'back'],
    ['303C', 'reverse', 'out', 'backwards', 'head-first', 'back'],
    ['401B', 'inward', 'in', 'forwards', 'head-first', 'front'],
    ['5111A', 'forward', 'out', 'forwards', 'head-first', 'back'],
    ['5122D', 'forward', 'out', 'forwards', 'feet-first', 'front'],
    ['5231D', 'back', 'in', 'backwards', 'head-first', 'front'],
    ['5333D', 'reverse', 'out', 'backwards', 'head-first', 'front'],
    ['5411A', 'inward', 'in', 'forwards', 'head-first', 'back'],
    ['600A', 'forward', null, 'forwards', 'head-first', 'front'],
    ['611A', 'forward', null, 'forwards', 'feet-first', 'front'],
    ['626C', 'back', null, 'backwards', 'head-first', 'back'],
    ['6243D', 'back', null, 'backwards', 'head-first', 'front'],
  ] as const)('%s', (number, direction, facing, sense, enters, entrySide) => {
    expect(facets(number)).toMatchObject({ direction, facing, sense, enters, entrySide })
  })

  it('repeats what the number counts', () => {
    expect(facets('113B')).toEqual({
      family: 'forward',
      direction: 'forward',
      facing: 'out',
      sense: 'forwards',
      halfSomersaults: 3,
      halfTwists: 0,
      flying: true,
      position: 'B',
      enters: 'head-first',
      entrySide: 'front',
    })
  })
})
