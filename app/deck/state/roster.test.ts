import { describe, expect, it } from 'vitest'
import type { DeckSnapshot, SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { deckEdition, deckNow } from '@/tests/support/deck-items'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { groupPairs, nextDiver, proposedLevel, readRoster, rotationOf } from './roster'

const diver = (id: string, changes: Partial<SnapshotDiver> = {}): SnapshotDiver => ({
  id,
  club: 'club',
  name: `Diver ${id}`,
  shortName: id,
  level: 'one',
  standDown: null,
  pairs: [],
  ...changes,
})

const mara = diver('mara', {
  pairs: [
    { pair: '103C@3m', state: 'closed', because: 'It still wants 101C at 3 m.' },
    { pair: 'tread@poolside', state: 'held', because: null },
    { pair: '101C@1m', state: 'open', because: null },
    { pair: 'jump@1m', state: 'to sign', because: null },
    { pair: 'jump@3m', state: 'open', because: null },
    { pair: 'gone@3m', state: 'open', because: null },
  ],
})

const snapshot: DeckSnapshot = {
  v: 1,
  takenAt: deckNow,
  coach: { id: 'coach', name: 'A coach' },
  clubs: [],
  squads: [
    { id: 'early', club: 'club', name: 'Early', divers: ['mara', 'tomas', 'ines'] },
    { id: 'late', club: 'club', name: 'Late', divers: ['ines', 'mara'] },
    { id: 'alone', club: 'club', name: 'Alone', divers: ['solo'] },
  ],
  divers: [mara, diver('tomas'), diver('ines'), diver('solo'), diver('free')],
  edition: { hash: deckEdition, document: tinyEdition() },
  recent: [],
}
const roster = readRoster(snapshot)
const pair = (key: PairKey) => roster.curriculum.pairs.get(key) as Pair
const shown = (words: string, place: '1m' | '3m' | null = null) =>
  groupPairs(roster, mara, { words, place }).map(({ state, pairs }) => [state, ...pairs.map((entry) => entry.pair.key)])

describe('groupPairs', () => {
  it('puts what a coach has use for first, lowest level first, and leaves out what the edition does not have', () => {
    expect(shown('')).toEqual([
      ['to sign', 'jump@1m'],
      ['open', '101C@1m', 'jump@3m'],
      ['held', 'tread@poolside'],
      ['closed', '103C@3m'],
    ])
  })

  it('says by what a pair is closed', () => {
    expect(groupPairs(roster, mara, { words: '103', place: null })[0]?.pairs[0]?.because).toBe(
      'It still wants 101C at 3 m.',
    )
  })

  it('finds by number, whatever its case and spaces, by title and by place', () => {
    expect(shown('101')).toEqual([['open', '101C@1m']])
    expect(shown(' 103 c ')).toEqual([['closed', '103C@3m']])
    expect(shown('JUMP')).toEqual([
      ['to sign', 'jump@1m'],
      ['open', 'jump@3m'],
    ])
    expect(shown('', '3m')).toEqual([
      ['open', 'jump@3m'],
      ['closed', '103C@3m'],
    ])
    expect(shown('402')).toEqual([])
  })
})

describe('proposedLevel', () => {
  it('is the level that the diver works towards, or the lowest that teaches the pair when that is higher', () => {
    expect(proposedLevel(roster, mara, pair('101C@1m'))).toBe('one')
    expect(proposedLevel(roster, diver('x', { level: 'three' }), pair('101C@1m'))).toBe('three')
    expect(proposedLevel(roster, mara, pair('101C@3m'))).toBe('three')
  })
})

describe('nextDiver', () => {
  it('goes round the chosen squad, else the first that she is in', () => {
    const next = (id: string, squad: string | null) => nextDiver(roster, id, rotationOf(roster, id, squad))?.id
    expect(next('mara', 'early')).toBe('tomas')
    expect(next('mara', 'late')).toBe('ines')
    expect(next('ines', 'early')).toBe('mara')
    expect(next('tomas', 'late')).toBe('ines')
    expect(next('mara', null)).toBe('tomas')
  })

  it('passes over who is not here, also when the present one came without being ticked', () => {
    expect(nextDiver(roster, 'mara', 'early', ['mara', 'ines'])?.id).toBe('ines')
    expect(nextDiver(roster, 'mara', 'early', ['ines'])?.id).toBe('ines')
    expect(nextDiver(roster, 'mara', 'early', [])).toBeNull()
  })

  it('is nobody for who trains alone or in no squad', () => {
    expect(nextDiver(roster, 'solo', 'alone')).toBeNull()
    expect(rotationOf(roster, 'free', 'early')).toBeNull()
    expect(nextDiver(roster, 'free', null)).toBeNull()
  })
})
