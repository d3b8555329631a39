import { expect, test } from 'vitest'
import type { DoubtLink } from './doubt-chain'
import { doubtRoots } from './doubt-roots'

const link = (pair: DoubtLink['pair'], below?: DoubtLink['pair']): DoubtLink => ({
  pair,
  state: 'in doubt',
  doubt: below ? { kind: 'below', pair: below } : { kind: 'evidence', attempt: 'a' },
  until: null,
})
const lapsed: DoubtLink = { pair: '201A@1m', state: 'lapsed', doubt: null, until: 20_000 }

test('doubts are gathered by what fell, and what most rests on comes first', () => {
  const roots = doubtRoots([
    [link('201A@3m', '201A@1m'), lapsed],
    [link('101C@1m')],
    [link('103C@1m', '101C@1m'), link('101C@1m')],
    [link('103B@1m', '103C@1m'), link('103C@1m', '101C@1m'), link('101C@1m')],
  ])
  expect(roots.map((root) => [root.link.pair, root.link.state, root.resting])).toEqual([
    ['101C@1m', 'in doubt', ['103C@1m', '103B@1m']],
    ['201A@1m', 'lapsed', ['201A@3m']],
  ])
})

test('no doubt, no root', () => {
  expect(doubtRoots([])).toEqual([])
  expect(doubtRoots([[]])).toEqual([])
})
