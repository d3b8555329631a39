import { describe, expect, it } from 'vitest'
import type { Rating } from '../curriculum/model'
import { bestOf, notComparable, standOut } from './comparable'

const moment = (id: string, at: number, ...ratings: Rating[]) => ({ id, at, ratings })

describe('the moments that stand out', () => {
  it('are the oldest, the best rated and the latest, one for all when it is alone', () => {
    const all = [moment('c', 3, 2, 2), moment('a', 1, 1), moment('b', 2, 3, 4), moment('d', 4)]
    expect(standOut(all).map(({ moment: { id }, by }) => [id, ...by])).toEqual([
      ['a', 'oldest'],
      ['b', 'best'],
      ['d', 'latest'],
    ])
    expect(standOut([moment('a', 1, 3)]).map(({ by }) => by)).toEqual([['oldest', 'best', 'latest']])
    expect(standOut([])).toEqual([])
  })

  it('have no best where nobody rated, and the later of two alike', () => {
    expect(bestOf([moment('a', 1), moment('b', 2)])).toBeNull()
    expect(bestOf([moment('b', 2, 3, 3), moment('a', 1, 3)])?.id).toBe('b')
  })
})

describe('two moments', () => {
  it('can be compared when they show the same dive, from whatever height', () => {
    expect(notComparable({ copies: ['a0', 'a'], skill: '101B' }, { id: 'b', skill: '101B' })).toBeNull()
    expect(notComparable({ copies: ['a0', 'a'], skill: '101B' }, { id: 'b', skill: '401B' })).toEqual({
      why: 'different dives',
    })
    for (const id of ['a0', 'a'])
      expect(notComparable({ copies: ['a0', 'a'], skill: '101B' }, { id, skill: '101B' })).toEqual({
        why: 'same moment',
      })
  })
})
