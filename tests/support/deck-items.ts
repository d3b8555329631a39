import { v7 } from 'uuid'
import type { AttemptItem, CallItem, IncidentItem, ObservationItem } from '../../lib/assessment/deck/contract'

/** A fixed instant, so that items built in tests do not move with today. */
export const deckNow = Date.UTC(2026, 2, 7, 16, 30)

const device = '0f5a1c52-6d0a-4a53-9f6e-5f0b1b1f4a11'
export const deckDiver = '7d9f0f0c-95bb-4e0b-8e3f-0a63c8f6c001'
export const deckEdition = 'ab'.repeat(32)

/** A call of three attempts at 101C on 1 m. */
export const aCall = (changes: Partial<CallItem> = {}): CallItem => ({
  kind: 'call',
  id: v7({ msecs: deckNow }),
  diver: deckDiver,
  skill: '101C',
  place: '1m',
  atLevel: 'one',
  count: 3,
  calledAt: deckNow,
  device,
  ...changes,
})

/** An uncalled attempt unless a call is given. */
export const anAttempt = (changes: Partial<AttemptItem> = {}): AttemptItem => ({
  kind: 'attempt',
  id: v7({ msecs: deckNow + 20_000 }),
  diver: deckDiver,
  skill: '101C',
  place: '1m',
  atLevel: 'one',
  call: null,
  attemptedAt: deckNow + 20_000,
  setting: 'training',
  cued: false,
  device,
  ...changes,
})

/** What a coach saw of an attempt: the two critical criteria of the small edition sound, the rest as expected. */
export const anObservation = (attempt: string, changes: Partial<ObservationItem> = {}): ObservationItem => ({
  kind: 'observation',
  id: v7({ msecs: deckNow + 25_000 }),
  attempt,
  edition: deckEdition,
  observedOn: 'deck',
  observedAt: deckNow + 25_000,
  ratings: { 'hands-locked': 3, 'safe-distance': 3 },
  restAsExpected: true,
  faults: [],
  note: null,
  moments: [],
  supersedes: null,
  ...changes,
})

/** A bad landing at 101C on 1 m, before its attempt was kept. */
export const anIncident = (changes: Partial<IncidentItem> = {}): IncidentItem => ({
  kind: 'incident',
  id: v7({ msecs: deckNow + 22_000 }),
  diver: deckDiver,
  skill: '101C',
  place: '1m',
  what: 'bad landing',
  attempt: null,
  note: null,
  happenedAt: deckNow + 22_000,
  device,
  ...changes,
})
