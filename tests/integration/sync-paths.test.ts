import fc from 'fast-check'
import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { DeckItem, ItemAnswer } from '../../lib/assessment/deck/contract'
import { keepReadiness } from '../../lib/assessment/store/readiness'
import { openBatch } from '../../lib/assessment/store/sync/open-batch'
import { parseItem } from '../../lib/assessment/store/sync/parse'
import { filesAfter, takeOneByOne, takeTogether } from '../../lib/assessment/store/sync/sync'
import { asAccount, closeDatabase } from '../../lib/platform/db'
import { insertDiver, insertDiverMembership } from '../../seed/builders/people'
import { asRole } from '../support/database'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

// A batch is judged in memory and written together; when that meets a conflict, item by item. Both ways must keep the same
// rows and give the same answers, whatever comes in whatever order.
let coast: SmallCoast
beforeAll(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const ratings = fc.constantFrom<0 | 1 | 2 | 3 | 4>(0, 1, 2, 3, 4)
/** What can be wrong with an item, or happen to it on its way. */
const mishap = fc.constantFrom('none', 'none', 'none', 'again', 'other content', 'unknown skill', 'lost', 'malformed')

const drawn = fc.array(
  fc.record({
    at: fc.integer({ min: 0, max: 50 }),
    rating: ratings,
    stranger: fc.integer({ min: 0, max: 7 }).map((n) => n === 0),
    mishaps: fc.tuple(mishap, mishap, mishap),
    corrected: fc.boolean(),
    incident: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
    note: fc.boolean(),
  }),
  { minLength: 1, maxLength: 6 },
)

type Part = typeof drawn extends fc.Arbitrary<(infer One)[]> ? One : never

function withMishap(item: DeckItem, what: string): unknown[] {
  switch (what) {
    case 'again':
      return [item, item]
    case 'other content':
      return [
        item,
        item.kind === 'call' ? { ...item, count: item.count + 1 } : { ...item, device: uuidv7(), cued: true },
      ]
    case 'unknown skill':
      return [{ ...item, skill: 'moonsault' }]
    case 'lost':
      return []
    case 'malformed':
      return [{ ...item, id: 'no id' }, item]
    default:
      return [item]
  }
}

/** Items as a deck might send them, with ids of their own each time. */
const itemsOf = (parts: readonly Part[]): unknown[] =>
  parts.flatMap((part) => {
    const diver = part.stranger ? coast.divers.there : coast.divers.here
    const at = noon + part.at * minute
    const [call, attempt, observation] = ratedAttempt(coast, {
      diver,
      skill: 'tread',
      place: 'poolside',
      at,
      ratings: { 'clear-water': part.rating },
    })
    if (call?.kind !== 'call' || attempt?.kind !== 'attempt' || observation?.kind !== 'observation') return []
    const seen = { ...observation, id: uuidv7(), attempt: attempt.id, note: part.note ? 'Looked well before.' : null }
    const correction = {
      ...seen,
      id: uuidv7(),
      note: null,
      supersedes: { id: seen.id, reason: 'Tapped the wrong row.' },
    }
    const incident = {
      kind: 'incident',
      id: uuidv7(),
      diver,
      skill: 'tread',
      place: 'poolside',
      what: 'bad landing',
      attempt: attempt.id,
      happenedAt: at,
      note: null,
      device: attempt.device,
    } as const
    return [
      ...withMishap(call, part.mishaps[0]),
      ...withMishap(attempt, part.mishaps[1]),
      ...withMishap(seen, part.mishaps[2]),
      ...(part.corrected ? [correction] : []),
      ...(part.incident ? [incident] : []),
    ]
  })

const tables = ['Call', 'Attempt', 'Observation', 'ObservationHead', 'Incident', 'Moment'] as const

/** Takes a batch one way, reads back what it left, and takes it all back. */
async function takenBy(way: typeof takeTogether, items: readonly unknown[], sentAt: number) {
  const scope = await coachAs(coast, 'assistant', sentAt)
  const undone = new Error('undone')
  let left: { readonly answers: readonly ItemAnswer[] } | undefined
  await asAccount(scope.account, async (tx) => {
    const entries = items.map(parseItem)
    const batch = await openBatch(
      tx,
      scope,
      sentAt,
      entries.flatMap(({ item }) => item ?? []),
    )
    const taken = await way(batch, entries)
    await keepReadiness(tx, scope, batch.curriculum, filesAfter(taken))
    const rows: Record<string, unknown> = {}
    for (const table of tables) {
      // What is made anew each time: ids and commitments of words, and the digest over them.
      rows[table] = await tx.$queryRawUnsafe(
        `SELECT to_jsonb(t) - 'noteId' - 'reasonId' - 'digest' - 'ledgerSeq' AS row FROM "${table}" t ORDER BY to_jsonb(t)::text`,
      )
    }
    const readiness = await tx.readiness.findMany({ orderBy: [{ diverId: 'asc' }, { target: 'asc' }] })
    const words = await tx.words.count()
    left = { answers: taken.answers, ...{ rows, readiness, words } }
    throw undone
  }).catch((error: unknown) => {
    if (error !== undone) throw error
  })
  return left
}

it('is kept the same, written together or item by item', async () => {
  const results = new Set<string>()
  await fc.assert(
    fc.asyncProperty(drawn, async (parts) => {
      const items = itemsOf(parts)
      const sentAt = noon + 60 * minute
      const together = await takenBy(takeTogether, items, sentAt)
      expect(together).toEqual(await takenBy(takeOneByOne, items, sentAt))
      for (const { result } of together?.answers ?? []) results.add(result)
    }),
    { seed: 20260314, numRuns: 40, endOnFailure: true },
  )
  expect([...results].sort()).toEqual(['accepted', 'known', 'refused'])
})

it('is taken item by item when another device writes one of its ids meanwhile, and refuses only that one', async () => {
  const other = uuidv7()
  await asRole('owner', async (owner) => {
    const since = new Date(noon - 100 * dayLength)
    const words = { givenName: 'Lio', familyName: 'Oake', bornOn: '2014-05-01' }
    await insertDiver(owner, { id: other, programmeId: coast.programme, ...words, createdAt: since })
    await insertDiverMembership(owner, { id: uuidv7(), diverId: other, clubId: coast.clubs.here, from: since })
  })
  const items = (diver: string) =>
    ratedAttempt(coast, { diver, skill: 'tread', place: 'poolside', at: noon, ratings: {} })
  for (let round = 0; round < 5; round++) {
    const clash = { id: uuidv7({ msecs: noon }) }
    const sends = [coast.divers.here, other].map((diver) => {
      const [first] = items(diver)
      return sendAs(coast, 'assistant', noon + 60 * minute, [{ ...first, ...clash }, ...items(diver).slice(0, 2)])
    })
    const answers = await Promise.all(sends)
    const first = answers.map(([answer]) => answer)
    expect(first.map((answer) => answer?.result).sort()).toEqual(['accepted', 'refused'])
    expect(first.find((answer) => answer?.result === 'refused')).toMatchObject({ code: 'same id, other content' })
    expect(answers.flatMap((one) => one.slice(1).map(({ result }) => result))).toEqual(Array(4).fill('accepted'))
  }
})
