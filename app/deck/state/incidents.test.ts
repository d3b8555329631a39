import { describe, expect, it } from 'vitest'
import type { DeckSnapshot, SnapshotDiver } from '@/lib/assessment/deck/contract'
import { deckDiver, deckEdition, deckNow } from '@/tests/support/deck-items'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { deckAfter, emptyDeck } from './deck-state'
import { localIncidents, makeIncident, withIncidents } from './incidents'
import { readRoster } from './roster'

const keys = ['tread@poolside', 'jump@1m', 'jump@3m', '101C@1m', '103C@3m'] as const
const mira: SnapshotDiver = {
  id: deckDiver,
  club: 'club',
  name: 'Mira Oake',
  shortName: 'Mira',
  level: 'one',
  standDown: null,
  pairs: keys.map((pair) => ({ pair, state: 'open', because: null })),
}
const snapshot: DeckSnapshot = {
  v: 1,
  takenAt: deckNow,
  coach: { id: 'coach', name: 'A coach' },
  clubs: [],
  squads: [],
  divers: [mira, { ...mira, id: 'another' }],
  edition: { hash: deckEdition, document: tinyEdition() },
  recent: [],
}
const roster = readRoster(snapshot)
const clock = () => '14:05'
const nothing = { unsent: [], refused: [] }
const stamp = { now: deckNow, device: 'device', edition: deckEdition, newId: () => 'incident-1' }
const incident = (what: Parameters<typeof makeIncident>[1], skill = 'jump') =>
  makeIncident({ diver: deckDiver, skill, place: '1m' }, what, { note: ' ', attempt: null }, stamp)

const shown = (item: ReturnType<typeof incident>, held: Parameters<typeof localIncidents>[2] = nothing) => {
  const paused = withIncidents(roster, localIncidents(roster, [item], held), clock)
  const pairs = paused.divers.get(deckDiver)?.pairs ?? []
  return { paused, diver: paused.divers.get(deckDiver), of: (key: string) => pairs.find(({ pair }) => pair === key) }
}

describe('an incident on this phone', () => {
  it('closes its pair and what can rest on it at once, and says that it is not sent', () => {
    const item = incident('bad landing')
    const { of, paused } = shown(item, { unsent: [item], refused: [] })
    expect(of('jump@1m')).toMatchObject({
      state: 'closed',
      because: 'Bad landing at 14:05, recorded on this phone, not sent yet: paused until a head coach clears it.',
    })
    expect(of('101C@1m')?.because).toContain('It rests on Forward jump, standing at 1 m. Bad landing at 14:05')
    expect(of('103C@3m')?.state).toBe('closed')
    expect(of('tread@poolside')?.state).toBe('open')
    expect(paused.divers.get('another')).toEqual({ ...mira, id: 'another' })
    expect(paused.snapshot.divers[0]).toEqual(paused.divers.get(deckDiver))
  })

  it('takes a diver out of the water after a knock to the head', () => {
    const { of, diver } = shown(incident('knock to the head'))
    expect(diver?.standDown).toContain('Mira is stood down from the water. Knock to the head at 14:05')
    expect(keys.map((key) => of(key)?.state)).toEqual(keys.map(() => 'closed'))
  })

  it('pauses whether it waits, was refused or was sent, until the snapshot knows it', () => {
    const item = incident('too close')
    const at = (held: Parameters<typeof localIncidents>[2]) => shown(item, held).of('jump@1m')?.because
    expect(at({ unsent: [], refused: [{ item }] })).toContain('not taken by the server: tell the head coach')
    expect(at(nothing)).toContain('sent from this phone')
    const known = readRoster({
      ...snapshot,
      incidents: [
        { id: item.id, diver: deckDiver, pair: 'jump@1m', what: 'too close', happenedAt: deckNow, cleared: true },
      ],
    })
    expect(localIncidents(known, [item], { unsent: [item], refused: [] })).toEqual([])
    expect(withIncidents(known, [], clock)).toBe(known)
  })

  it('is found in the queue alone, as after a reload, and pauses though the edition lacks its skill', () => {
    const item = incident('knock to the head', 'gone')
    const local = localIncidents(roster, [], { unsent: [item], refused: [] })
    expect(local).toEqual([{ item, at: 'unsent' }])
    expect(withIncidents(roster, local, clock).divers.get(deckDiver)?.pairs[0]?.state).toBe('closed')
  })

  it('is remembered by the deck, and goes when it is discarded', () => {
    const item = incident('bad landing')
    const after = deckAfter(emptyDeck, { type: 'incident', item })
    expect(after.incidents).toEqual([item])
    expect(deckAfter(after, { type: 'gone', ids: [item.id] }).incidents).toEqual([])
  })

  it('keeps a note only where one was written', () => {
    expect(incident('bad landing').note).toBeNull()
    const noted = makeIncident(
      { diver: deckDiver, skill: 'jump', place: '1m' },
      'too close',
      { note: ' Brushed the tip. ', attempt: null },
      stamp,
    )
    expect(noted.note).toBe('Brushed the tip.')
  })
})
