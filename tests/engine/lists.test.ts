import { describe, expect, it } from 'vitest'
import { type CallFact, type Entry, type ListName, otherEntries, recordEntries } from '@/lib/assessment/lists'
import { sayEntry } from '@/lib/assessment/readiness/say-entry'
import type { AttemptFact, DiverRecord } from '@/lib/assessment/record'
import { anAttempt, anIncident, anObservation, aRecord, noonOf } from '@/tests/support/record'
import { asked, coast, dived, divedBut, holding, shown, today } from '../support/small-coast'

// Worked cases of the head coach's lists: what a record yields, and the sentence that says why.
const words = { curriculum: coast, today, diver: 'Mira' }
const entriesOf = (record: DiverRecord, day = today, calls: readonly CallFact[] = []): Entry[] => [
  ...recordEntries(asked(record, day)),
  ...otherEntries(calls, [], day),
]
const on = <L extends ListName>(entries: readonly Entry[], list: L) =>
  entries.filter((entry): entry is Extract<Entry, { list: L }> => entry.list === list)
const sentencesOn = (list: ListName, entries: readonly Entry[]) =>
  on(entries, list).map((entry) => sayEntry(entry, words))

describe('in doubt', () => {
  const record = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 20, {
    attempts: [divedBut('tread@poolside', today - 2, { 'clear-water': 1 })],
  })

  it('lists a doubt of its own and, transitively, all that rests on it, with the chain said', () => {
    expect(on(entriesOf(record), 'in doubt').map(({ pair }) => pair)).toEqual(['101C@1m', 'jump@1m', 'tread@poolside'])
    const said = sentencesOn('in doubt', entriesOf(record))
    expect(said[2]).toMatch(/^Treads deep water at the poolside is in doubt: “clear water” rated 1 on /)
    expect(said[0]).toMatch(
      /^Forward dive, tuck at 1 m is in doubt: it rests on forward jump, standing at 1 m, which is in doubt itself: it rests on treads deep water at the poolside, which is in doubt itself: “clear water” rated 1 on .+ where 3 is asked\.$/,
    )
  })

  it('says of a chain that ends in a lapse when that was, and of one that ends in a revocation that it was revoked', () => {
    const lapsed = holding(['tread@poolside'], today - 200, {
      attempts: shown('jump@1m', today - 20),
      signOffs: holding(['jump@1m'], today - 20).signOffs,
    })
    // A held lead-up lasts for a held dive only: a jump is a lead-up itself.
    expect(sentencesOn('in doubt', entriesOf(lapsed))).toEqual([
      expect.stringMatching(/^Forward jump, .+: it rests on treads deep water at the poolside, which lapsed on .+\.$/),
    ])
    const revoked = holding(['tread@poolside', 'jump@1m'], today - 20)
    const withdrawn = {
      ...revoked,
      signOffs: revoked.signOffs.map((one) => ({
        ...one,
        revokedAt: one.pair === 'tread@poolside' ? noonOf(today - 1) : null,
      })),
    }
    expect(sentencesOn('in doubt', entriesOf(withdrawn))).toEqual([expect.stringMatching(/which was revoked\.$/)])
  })

  it('is not listed where another signature at its level is current, nor when the recheck has cleared it', () => {
    const cleared = {
      ...record,
      attempts: [...record.attempts, ...[1, 2, 3].map((minute) => dived('tread@poolside', today - 1, 4, { minute }))],
    }
    expect(on(entriesOf(record), 'in doubt')).toHaveLength(3)
    expect(on(entriesOf(cleared), 'in doubt')).toEqual([])
  })
})

describe('about to lapse', () => {
  // The small edition: valid for 180 days, renewed within 90.
  const signedAgo = (days: number) => holding(['tread@poolside'], today - days)

  it.each([
    [165, null],
    [166, 'soon'],
    [180, 'soon'],
    [181, 'lapsed'],
    [270, 'lapsed'],
    [271, null],
  ] as const)('signed %i days ago: %s', (days, state) => {
    const listed = on(entriesOf(signedAgo(days)), 'lapsing')
    expect(listed).toHaveLength(state === null ? 0 : 1)
    if (state)
      expect(sayEntry(listed[0] as Entry, words)).toMatch(
        state === 'soon' ? /lapses after/ : /the recheck renews it until/,
      )
  })

  it('can be renewed by one key once the recheck is shown', () => {
    const record = signedAgo(200)
    const again = { ...record, attempts: [...record.attempts, dived('tread@poolside', today - 1)] }
    const [listed] = on(entriesOf(again), 'lapsing')
    expect(listed?.renewal).toMatchObject({ by: 'recheck', level: 'one' })
    expect(on(entriesOf(record), 'lapsing')[0]?.renewal).toBeNull()
  })
})

describe('raised critical ratings', () => {
  const view = (
    id: string,
    rating: 0 | 1 | 2 | 3 | 4 | null,
    supersedes: string | null,
    acceptedOn: number | null = null,
  ) =>
    anObservation({
      id,
      ratings: rating === null ? {} : { 'clear-water': rating },
      receivedAt: noonOf(today - 3, supersedes ? 60 : 0),
      supersedes,
      raiseAcceptedAt: acceptedOn === null ? null : noonOf(acceptedOn),
    })
  const attempt = (...observations: AttemptFact['observations']): DiverRecord =>
    aRecord({ attempts: [anAttempt('tread@poolside', today - 3, { observations })] })
  const raised = (record: DiverRecord) => on(entriesOf(record), 'raised').map(({ raises }) => raises)

  it('lists a raise and one taken back, with the lowest rating that still counts', () => {
    expect(raised(attempt(view('a', 1, null), view('b', 3, 'a')))).toEqual([
      [{ criterion: 'clear-water', from: 1, to: 3 }],
    ])
    expect(raised(attempt(view('a', 1, null), view('b', null, 'a')))).toEqual([
      [{ criterion: 'clear-water', from: 1, to: null }],
    ])
    const chain = attempt(view('a', 0, null), view('b', 2, 'a'), view('c', 3, 'b'))
    expect(raised(chain)).toEqual([[{ criterion: 'clear-water', from: 0, to: 3 }]])
  })

  it('lists no lowering, no first rating, and nothing once it was accepted', () => {
    expect(raised(attempt(view('a', 3, null), view('b', 1, 'a')))).toEqual([])
    expect(raised(attempt(view('a', 1, null)))).toEqual([])
    expect(raised(attempt(view('a', 1, null), view('b', 3, 'a', today - 1)))).toEqual([])
  })
})

describe('the other lists', () => {
  it('flags attempts at a closed skill until they are released', () => {
    const closed = (releasedAt: number | null) =>
      aRecord({ attempts: [dived('jump@1m', today - 1, 4, { closedThen: true, releasedAt })] })
    expect(sentencesOn('flagged', entriesOf(closed(null)))).toEqual([
      expect.stringMatching(/^Forward jump, standing at 1 m was dived on .+ while it was closed: it earns nothing/),
    ])
    expect(on(entriesOf(closed(noonOf(today))), 'flagged')).toEqual([])
  })

  it('flags a dive from a phone whose clock runs ahead, until its date has come', () => {
    const ahead = aRecord({
      attempts: [dived('tread@poolside', today + 3, 4, { futureDated: true, receivedAt: noonOf(today) })],
    })
    expect(on(entriesOf(ahead), 'flagged')).toMatchObject([{ why: 'future' }])
    expect(on(entriesOf(ahead, today + 3), 'flagged')).toEqual([])
  })

  it('lists incidents until they are cleared', () => {
    const at = (clearedAt: number | null) => aRecord({ incidents: [anIncident('jump@1m', today - 1, { clearedAt })] })
    expect(sentencesOn('incidents', entriesOf(at(null)))[0]).toMatch(/^A dive too close to the board at forward jump/)
    expect(on(entriesOf(at(noonOf(today))), 'incidents')).toEqual([])
  })

  it('lists a call whose numbers were not all dived when its day has ended, and not before', () => {
    const call: CallFact = { id: 'call', pair: 'jump@1m', coach: 'ann', day: today - 1, count: 3, dived: [1, 3] }
    expect(sentencesOn('not rated', entriesOf(aRecord(), today, [call]))).toEqual([
      'Of three called attempts at forward jump, standing at 1 m, one is not rated.',
    ])
    expect(entriesOf(aRecord(), today - 1, [call])).toEqual([])
    expect(entriesOf(aRecord(), today, [{ ...call, dived: [1, 2, 3] }])).toEqual([])
  })

  it('has nothing to say of a diver of whom nothing is known', () => {
    expect(entriesOf(aRecord())).toEqual([])
  })
})
