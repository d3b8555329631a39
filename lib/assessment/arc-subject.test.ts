import { describe, expect, it } from 'vitest'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { indexEdition } from '../curriculum/edition/index-edition'
import type { Skill } from '../curriculum/model'
import { arcPath } from './arc-subject'

const path = (changes: Partial<Skill>) => {
  const edition = tinyEdition()
  const skills = edition.skills.map((skill) => (skill.key === '101C' ? { ...skill, ...changes } : skill))
  const pair = indexEdition({ ...edition, skills }, 'tiny').pairs.get('101C@1m')
  if (!pair) throw new Error('the small edition has 101C at 1 m')
  return arcPath(pair)
}

describe('the path of an arc', () => {
  // World Aquatics DV 2: groups 1 and 3 face the water, 2 and 4 the board; 1 and 4 turn forwards, 2 and 3 backwards.
  it.each([
    ['103B', 'out', 'forwards', 'head-first'],
    ['203B', 'in', 'backwards', 'head-first'],
    ['303C', 'out', 'backwards', 'head-first'],
    ['403C', 'in', 'forwards', 'head-first'],
    ['202C', 'in', 'backwards', 'feet-first'],
    ['5122D', 'out', 'forwards', 'feet-first'],
    ['5231D', 'in', 'backwards', 'head-first'],
  ])('of %s faces %s, turns %s and enters %s', (dive, facing, turning, enters) => {
    expect(path({ dive })).toMatchObject({ facing, turning, enters, height: '1m' })
  })
  it('of a jump does not turn over', () => {
    expect(
      path({ dive: null, phaseSet: 'standing feet-first', facets: { facing: 'out', halfSomersaults: 0 } }),
    ).toEqual({
      variant: 'standing feet-first',
      facing: 'out',
      turning: null,
      enters: 'feet-first',
      height: '1m',
    })
  })
})
