import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { coachAs, makeCoast, minute, noon, ratedAttempt, type SmallCoast, sendAs } from '../support/small-club'

let coast: SmallCoast
beforeAll(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const treads = (at: number, changes: Partial<Parameters<typeof ratedAttempt>[1]> = {}) =>
  ratedAttempt(coast, {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': 3 },
    ...changes,
  })

const aMoment = { link: 'https://clips.example/a', start: 1, end: 4 }

const count = (table: string, id: string): Promise<number> =>
  asRole('owner', async (owner) =>
    Number((await owner.query(`SELECT count(*) FROM "${table}" WHERE "id" = $1`, [id])).rows[0].count),
  )

const results = (answers: Awaited<ReturnType<typeof syncDeck>>) => answers.map((answer) => answer.result)

describe('a batch from the deck', () => {
  it('keeps a call, an attempt and an observation, and knows them when they come again', async () => {
    const items = treads(noon)
    expect(results(await sendAs(coast, 'assistant', noon + 5 * minute, items))).toEqual([
      'accepted',
      'accepted',
      'accepted',
    ])
    expect(results(await sendAs(coast, 'assistant', noon + 6 * minute, items))).toEqual(['known', 'known', 'known'])
    for (const [index, table] of ['Call', 'Attempt', 'Observation'].entries())
      expect(await count(table, items[index]?.id ?? '')).toBe(1)
  })

  it('keeps each item once when the same batch arrives twice at the same time', async () => {
    const items = treads(noon + 10 * minute)
    const twice = await Promise.all([1, 2, 3].map(() => sendAs(coast, 'assistant', noon + 15 * minute, items)))
    for (const [index, item] of items.entries()) {
      expect(twice.map((answers) => answers[index]?.result).sort()).toEqual(['accepted', 'known', 'known'])
      expect(await count(['Call', 'Attempt', 'Observation'][index] ?? '', item.id)).toBe(1)
    }
  })

  it('refuses the same id with other content and shows both', async () => {
    const [call] = treads(noon + 20 * minute)
    await sendAs(coast, 'assistant', noon + 21 * minute, [call])
    const [answer] = await sendAs(coast, 'assistant', noon + 22 * minute, [{ ...call, count: 3 }])
    expect(answer).toMatchObject({ result: 'refused', code: 'same id, other content', field: 'id' })
    expect(answer?.message).toContain('1 × tread')
    expect(answer?.message).toContain('3 × tread')
  })

  it('answers each item by itself: a bad one holds back no other, and takes its children with it', async () => {
    const [call, attempt, observation] = treads(noon + 30 * minute)
    const wrong = { ...(call as object), skill: 'moonsault' }
    const good = treads(noon + 31 * minute)
    const answers = await sendAs(coast, 'assistant', noon + 35 * minute, [wrong, attempt, observation, ...good])
    expect(results(answers)).toEqual(['refused', 'refused', 'refused', 'accepted', 'accepted', 'accepted'])
    expect(answers[0]).toMatchObject({ code: 'unknown skill', field: 'skill' })
    expect(answers[1]).toMatchObject({ code: 'parent refused' })
    expect(answers[2]?.message).toContain('moonsault')
    expect(await count('Attempt', attempt?.id ?? '')).toBe(0)
  })

  it.each([
    [
      'a rating out of range',
      (item: object) => ({ ...item, ratings: { 'clear-water': 5 } }),
      'malformed',
      'ratings.clear-water',
    ],
    [
      'a criterion that does not apply',
      (item: object) => ({ ...item, ratings: { 'hands-locked': 3 } }),
      'criterion does not apply',
      'ratings.hands-locked',
    ],
    [
      'a fault of another skill',
      (item: object) => ({ ...item, faults: ['hands-apart'] }),
      'fault does not apply',
      'faults',
    ],
    [
      'a moment that ends before it begins',
      (item: object) => ({ ...item, moments: [{ id: uuidv7(), link: 'https://clips.example/a', start: 9, end: 4 }] }),
      'malformed',
      'moments.0.end',
    ],
    [
      'a time code typed as seconds',
      (item: object) => ({ ...item, moments: [{ ...aMoment, id: uuidv7(), start: 18_150_233, end: null }] }),
      'malformed',
      'moments.0.start',
    ],
    [
      'a moment within one millisecond',
      (item: object) => ({ ...item, moments: [{ ...aMoment, id: uuidv7(), start: 12.0001, end: 12.0004 }] }),
      'malformed',
      'moments.0.end',
    ],
    [
      'an edition nobody published',
      (item: object) => ({ ...item, edition: '0'.repeat(64) }),
      'unknown edition',
      'edition',
    ],
    ['an item without sense', () => 'not an object', 'malformed', 'item'],
    ['nothing at all', (item: object) => ({ ...item, ratings: {}, restAsExpected: false }), 'nothing rated', 'ratings'],
  ])('refuses %s at its place, and keeps the rest', async (_, spoil, code, field) => {
    const [call, attempt, observation] = treads(noon + 60 * minute)
    const answers = await sendAs(coast, 'assistant', noon + 65 * minute, [call, attempt, spoil(observation as object)])
    expect(results(answers)).toEqual(['accepted', 'accepted', 'refused'])
    expect(answers[2]).toMatchObject({ code, field })
    expect(answers[2]?.message).toMatch(/\w+ \w+/)
    // Mended, it is taken under its own id.
    expect(results(await sendAs(coast, 'assistant', noon + 66 * minute, [observation]))).toEqual(['accepted'])
  })

  it.each([
    ['a note that no table takes', (item: object) => ({ ...item, note: 'Flat.\u0000' })],
    [
      'two moments of one id',
      (item: object) => {
        const id = uuidv7()
        return { ...item, moments: [1, 2].map((start) => ({ ...aMoment, id, start })) }
      },
    ],
  ])('refuses %s though only the database finds it, and keeps what comes before and after', async (_, spoil) => {
    const [call, attempt, observation] = treads(noon + 67 * minute)
    const unfit = spoil(observation as object)
    const answers = await sendAs(coast, 'assistant', noon + 69 * minute, [
      ...[call, attempt, unfit],
      ...treads(noon + 68 * minute),
    ])
    expect(results(answers)).toEqual(['accepted', 'accepted', 'refused', 'accepted', 'accepted', 'accepted'])
    expect(answers[2]).toMatchObject({ code: 'malformed', message: expect.stringContaining('send it again') })
    expect(results(await sendAs(coast, 'assistant', noon + 69 * minute, [observation]))).toEqual(['accepted'])
  })

  it('refuses an incident that the database cannot store, and does not pause what comes after it', async () => {
    const [call, attempt, observation] = treads(noon + 67 * minute)
    const what = { kind: 'incident', skill: 'tread', place: 'poolside', what: 'bad landing', happenedAt: noon } as const
    const about = { id: uuidv7(), diver: coast.divers.here, attempt: null, device: uuidv7() }
    const incident = { ...what, ...about, note: 'Flat.\u0000' }
    const answers = await sendAs(coast, 'assistant', noon + 69 * minute, [call, incident, attempt, observation])
    expect(results(answers)).toEqual(['accepted', 'refused', 'accepted', 'accepted'])
    expect(await count('Incident', incident.id)).toBe(0)
    const { rows } = await asRole('owner', (owner) =>
      owner.query('SELECT "closedThen" FROM "Attempt" WHERE "id" = $1', [attempt?.id]),
    )
    expect(rows).toEqual([{ closedThen: false }])
  })

  it('tells a draft from an edition that does not exist', async () => {
    const draft = 'd'.repeat(64)
    await asRole('owner', (owner) =>
      owner.query('INSERT INTO "Draft" VALUES ($1, $2, $3, $4, now(), $5)', [
        uuidv7(),
        coast.programme,
        draft,
        '{}',
        coast.people.lead,
      ]),
    )
    const [call, attempt, observation] = treads(noon + 70 * minute)
    const answers = await sendAs(coast, 'assistant', noon + 75 * minute, [
      call,
      attempt,
      { ...(observation as object), edition: draft },
    ])
    expect(answers[2]).toMatchObject({ result: 'refused', code: 'unpublished edition' })
  })

  it("does not know another club's diver, nor an attempt at her", async () => {
    const items = treads(noon + 80 * minute, { diver: coast.divers.there })
    const answers = await sendAs(coast, 'assistant', noon + 85 * minute, items)
    expect(answers[0]).toMatchObject({ result: 'refused', code: 'unknown diver', field: 'diver' })
    const elsewhere = await sendAs(coast, 'elsewhere', noon + 86 * minute, items)
    expect(results(elsewhere)).toEqual(['accepted', 'accepted', 'accepted'])
    const [, , observation] = items
    const again = { ...(observation as object), id: uuidv7() }
    expect(await sendAs(coast, 'assistant', noon + 87 * minute, [again])).toMatchObject([
      { result: 'refused', code: 'unknown attempt' },
    ])
  })
})

describe('what is called', () => {
  const attemptOf = (id: string) =>
    asRole(
      'owner',
      async (owner) => (await owner.query('SELECT "called", "flags" FROM "Attempt" WHERE "id" = $1', [id])).rows[0],
    )

  it('is kept as uncalled when it was dived before it was called', async () => {
    const [call, attempt] = treads(noon + 100 * minute)
    const early = { ...(attempt as object), attemptedAt: noon + 90 * minute }
    await sendAs(coast, 'assistant', noon + 110 * minute, [call, early])
    expect(await attemptOf(attempt?.id ?? '')).toMatchObject({
      called: false,
      flags: ['call: dived before it was called'],
    })
  })

  it('survives a phone whose clock is a year ahead: called by its own clock, dated by the measured offset', async () => {
    const ahead = 365 * 86_400_000
    const items = treads(noon + 120 * minute + ahead)
    const scope = await coachAs(coast, 'assistant', noon + 125 * minute)
    expect(results(await syncDeck(scope, noon + 125 * minute + ahead, items))).toEqual([
      'accepted',
      'accepted',
      'accepted',
    ])
    expect(await attemptOf(items[1]?.id ?? '')).toMatchObject({ called: true, flags: [] })
  })

  it('keeps and flags an attempt that is dated in the future', async () => {
    const items = treads(noon + 600 * minute)
    await sendAs(coast, 'assistant', noon + 130 * minute, items)
    expect(await attemptOf(items[1]?.id ?? '')).toMatchObject({ flags: ['future-dated'] })
  })
})

describe('a correction', () => {
  it('supersedes what the coach saw, once, and says why', async () => {
    const items = treads(noon + 200 * minute)
    await sendAs(coast, 'assistant', noon + 205 * minute, items)
    const first = items[2] as object & { id: string }
    const corrected = {
      ...first,
      id: uuidv7(),
      ratings: { 'clear-water': 2 },
      supersedes: { id: first.id, reason: 'Looked again: late.' },
    }
    expect(results(await sendAs(coast, 'assistant', noon + 206 * minute, [corrected]))).toEqual(['accepted'])
    const second = { ...corrected, id: uuidv7() }
    expect(await sendAs(coast, 'assistant', noon + 207 * minute, [second])).toMatchObject([
      { code: 'already superseded' },
    ])
    const plain = { ...first, id: uuidv7() }
    expect(await sendAs(coast, 'assistant', noon + 208 * minute, [plain])).toMatchObject([{ code: 'already rated' }])
    const stranger = { ...corrected, id: uuidv7() }
    expect(await sendAs(coast, 'head', noon + 209 * minute, [stranger])).toMatchObject([
      { code: 'not yours to supersede' },
    ])
  })
})
