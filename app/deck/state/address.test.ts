import { describe, expect, it } from 'vitest'
import { type Route, readRoute, writeRoute } from './address'

const routes: Route[] = [
  { at: 'squads' },
  { at: 'diver', diver: 'a-b' },
  { at: 'rate', diver: 'a-b', pair: '101C@1m' },
  { at: 'more', diver: 'a-b', pair: 'tuck/jump@7.5m' },
  { at: 'seen' },
  { at: 'correct', observation: 'o' },
  { at: 'correct more', observation: 'o' },
  { at: 'unsent' },
  { at: 'mend', item: 'i' },
  { at: 'mend more', item: 'i' },
]

describe('the address of a screen', () => {
  it.each(routes)('is read back: %o', (route) => {
    expect(readRoute(writeRoute(route))).toEqual(route)
  })

  it.each(['', '#', '#/nowhere', '#/diver', '#/%E0%A4%A'])('%s leads to the squads', (hash) => {
    expect(readRoute(hash)).toEqual({ at: 'squads' })
  })
})
