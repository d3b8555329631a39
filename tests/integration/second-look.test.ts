import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { DeckItem } from '../../lib/assessment/deck/contract'
import { setGrant, setOpening } from '../../lib/assessment/store/grants'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { findDiverFile } from '../../lib/assessment/store/records'
import { rateLook, readLooks } from '../../lib/assessment/store/second-look'
import { asAccount, closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { checkReadinessAsOwner } from '../support/check-readiness'
import { asRole } from '../support/database'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  officeAs,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

// A second coach on video, blind, from another club: the grant of one attempt, and all that ends it.
let coast: SmallCoast
let attempt: string
let seen: DeckItem
let other: string
const later = noon + 2 * dayLength

/** A dive with a film: its attempt, and what was seen of it. */
async function film(at: number): Promise<[string, DeckItem]> {
  const items = ratedAttempt(coast, {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': 3 },
  }).map(
    (item): DeckItem =>
      item.kind === 'observation'
        ? { ...item, moments: [{ id: uuidv7({ msecs: at }), link: 'https://video.example/a', start: 3, end: 6 }] }
        : item,
  )
  const answers = await sendAs(coast, 'assistant', at + 2 * minute, items)
  expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  const [, dive, view] = items
  if (!dive || !view) throw new Error('a rated attempt is a call, a dive and a view')
  return [dive.id, view]
}

beforeEach(async () => {
  coast = await makeCoast()
  ;[attempt, seen] = await film(noon)
  ;[other] = await film(noon + 10 * minute)
})
afterAll(closeDatabase)

const open = async (to = true, at = later) => setOpening(await officeAs(coast, 'lead', at), to)
const grant = async (granted = true, who: 'head' | 'assistant' | 'elsewhere' = 'head', at = later + minute) =>
  setGrant(await coachAs(coast, who, at), { attempt, coach: coast.people.elsewhere, granted })
const looks = async (at = later + 2 * minute) => (await readLooks(await coachAs(coast, 'elsewhere', at))).looks
const rate = async (rating: 0 | 3 | 4, at = later + 5 * minute) =>
  rateLook(await coachAs(coast, 'elsewhere', at), {
    attempt,
    ratings: { 'clear-water': rating },
    restAsExpected: true,
    faults: [],
  })
const isSeen = async (table: string, where: string, values: unknown[] = [coast.divers.here]) =>
  (await countAs(coast.people.elsewhere, table, where, values)) > 0

describe('a look from another club', () => {
  it('is granted by the diver’s head coach only, and only when the programme has opened it', async () => {
    expect(await grant()).toMatchObject({ refusal: { code: 'not open' } })
    await expect(setOpening(await officeAs(coast, 'reviewer', later), true)).rejects.toThrow(/row-level security/)
    await open()
    expect(await grant(true, 'assistant')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await grant(true, 'elsewhere')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await grant()).toMatchObject({ ok: true })
    expect(await grant()).toMatchObject({ refusal: { code: 'granted before' } })
  })

  it('shows that attempt, its moment and the given name, and nothing else of the diver', async () => {
    expect(await looks()).toEqual([])
    await open()
    await grant()
    expect(await looks()).toMatchObject([
      { attempt, givenName: 'Mira', how: 'granted', moments: ['https://video.example/a#t=3.000,6.000'] },
    ])
    const seen = await asAccountRow(coast.people.elsewhere, (client) =>
      client.query('SELECT "id" FROM "Attempt" WHERE "diverId" = $1', [coast.divers.here]),
    )
    expect(seen.rows).toEqual([{ id: attempt }])
    expect(await countAs(coast.people.elsewhere, 'Moment', '"diverId" = $1', [coast.divers.here])).toBe(1)
    for (const table of [
      'Observation',
      'DiverWords',
      'DiverMembership',
      'Call',
      'Words',
      'SignOff',
      'Readiness',
      'Consent',
    ])
      expect(`${table} ${await isSeen(table, '"diverId" = $1')}`).toBe(`${table} false`)
    expect(await isSeen('Diver', '"id" = $1')).toBe(false)
    expect(await isSeen('ObservationHead', '"attemptId" = $1', [attempt])).toBe(false)
  })

  it('shows the films of the view in force: what a correction took out is gone, what it takes along is there', async () => {
    await open()
    await grant()
    const moments = [
      { id: uuidv7({ msecs: later + 2 * minute }), link: 'https://video.example/b', start: 1, end: 2 },
      { id: uuidv7({ msecs: later + 2 * minute }), link: 'https://video.example/c', start: 4, end: null },
    ]
    const correction = {
      ...seen,
      id: uuidv7({ msecs: later + 2 * minute }),
      supersedes: { id: seen.id, reason: 'Another clip.' },
      moments,
    }
    const [answer] = await sendAs(coast, 'assistant', later + 3 * minute, [correction])
    expect(answer?.message ?? answer?.result).toBe('accepted')
    expect(await looks(later + 4 * minute)).toMatchObject([
      { attempt, moments: ['https://video.example/b#t=1.000,2.000', 'https://video.example/c#t=4.000'] },
    ])
    const { rows } = await asAccountRow(coast.people.elsewhere, (client) =>
      client.query('SELECT "id" FROM "Moment" WHERE "diverId" = $1 ORDER BY "id"', [coast.divers.here]),
    )
    expect(new Set(rows.map(({ id }) => id))).toEqual(new Set(moments.map(({ id }) => id)))
  })

  it('is kept as a second coach’s view, puts readiness out of date, and is worked out by her own club', async () => {
    await open()
    await grant()
    expect(await rate(3)).toMatchObject({ ok: true })
    expect(await looks(later + 6 * minute)).toEqual([])
    const scope = await coachAs(coast, 'head', later + 6 * minute)
    const file = await asAccount(scope.account, (tx) => findDiverFile(tx, scope, coast.divers.here))
    const views = file?.record.attempts.find(({ id }) => id === attempt)?.observations
    expect(views).toMatchObject([
      { coach: coast.people.assistant, observedOn: 'deck' },
      { coach: coast.people.elsewhere, observedOn: 'video', withinScope: true },
    ])
    expect((await checkReadinessAsOwner(coast, later + 6 * minute)).differences).toEqual([])
    expect(await rate(4, later + 7 * minute)).toMatchObject({ refusal: { code: 'not found' } })
  })

  it('counts what is dangerous at once', async () => {
    await open()
    await grant()
    await rate(0)
    const { differences } = await checkReadinessAsOwner(coast, later + 6 * minute)
    expect(differences).toEqual([])
    const rows = await asAccountRow(coast.people.head, (client) =>
      client.query(`SELECT "status" FROM "Readiness" WHERE "diverId" = $1 AND "target" = 'level:one'`, [
        coast.divers.here,
      ]),
    )
    expect(rows.rows).toEqual([{ status: 'unmet' }])
  })

  it('marks what lies beyond what she may judge at home', async () => {
    await asRole('owner', (owner) =>
      owner.query(
        `INSERT INTO "CoachScope" ("id", "accountId", "clubId", "families", "places", "setBy", "setAt") VALUES ($1, $2, $3, '{forward}', '{1m}', $2, $4)`,
        [uuidv7(), coast.people.elsewhere, coast.clubs.there, new Date(noon)],
      ),
    )
    await open()
    await grant()
    await rate(3)
    const seen = await asAccountRow(coast.people.elsewhere, (client) =>
      client.query('SELECT "withinScope" FROM "Observation" WHERE "attemptId" = $1', [attempt]),
    )
    expect(seen.rows).toEqual([{ withinScope: false }])
  })
})

describe('what ends a look', () => {
  const gone = async (at: number) => {
    expect(await looks(at)).toEqual([])
    expect(await isSeen('Attempt', '"diverId" = $1')).toBe(false)
    expect(await isSeen('Moment', '"diverId" = $1')).toBe(false)
    expect(await rate(3, at)).toMatchObject({ refusal: { code: 'not found' } })
  }
  const granted = async () => {
    await open()
    await grant()
    expect(await looks()).toHaveLength(1)
  }

  it('the head coach withdraws it; what was written stays with who wrote it', async () => {
    await granted()
    await rate(3)
    expect(await grant(false, 'head', later + 8 * minute)).toMatchObject({ ok: true })
    await gone(later + 9 * minute)
    expect(await countAs(coast.people.elsewhere, 'Observation', '"attemptId" = $1', [attempt])).toBe(1)
    expect(await grant(false, 'head', later + 10 * minute)).toMatchObject({ refusal: { code: 'not granted' } })
  })

  it('the lead closes looking across clubs', async () => {
    await granted()
    await open(false, later + 3 * minute)
    await gone(later + 4 * minute)
  })

  it('the consent to video is withdrawn', async () => {
    await granted()
    const withdrawn = {
      diver: coast.divers.here,
      purpose: 'video',
      given: false,
      saidBy: 'Her mother, by phone',
    } as const
    expect(await recordConsent(await coachAs(coast, 'head', later + 3 * minute), withdrawn)).toMatchObject({ ok: true })
    await gone(later + 4 * minute)
  })

  it('the diver leaves the club that granted it', async () => {
    await granted()
    await asRole('owner', (owner) =>
      owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, new Date(noon)]),
    )
    await gone(later + 4 * minute)
  })
})

it('no coach writes about another club’s attempt without a grant, on deck with one, or about another attempt', async () => {
  const item = (of: string, observedOn: 'deck' | 'video') => ({
    kind: 'observation',
    id: uuidv7({ msecs: later }),
    attempt: of,
    edition: coast.edition,
    observedOn,
    observedAt: later,
    ratings: { 'clear-water': 3 },
    restAsExpected: true,
    faults: [],
    note: null,
    moments: [],
    supersedes: null,
  })
  const send = (of: string, on: 'deck' | 'video') => sendAs(coast, 'elsewhere', later + 3 * minute, [item(of, on)])
  expect(await send(attempt, 'video')).toMatchObject([{ result: 'refused', code: 'unknown attempt' }])
  await open()
  await grant()
  expect(await send(attempt, 'deck')).toMatchObject([{ result: 'refused', code: 'unknown attempt' }])
  expect(await send(other, 'video')).toMatchObject([{ result: 'refused', code: 'unknown attempt' }])
  expect(await send(attempt, 'video')).toMatchObject([{ result: 'accepted' }])
})
