import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { ObservationItem } from '../../lib/assessment/deck/contract'
import { readDiver } from '../../lib/assessment/store/reads'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { readSafety } from '../../lib/assessment/store/safety'
import { readSnapshot } from '../../lib/assessment/store/snapshot'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { asRole } from '../support/database'
import {
  coachAs,
  makeCoast,
  minute,
  noon,
  officeAs,
  type PersonKey,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const say = async (
  purpose: 'record' | 'video',
  given: boolean,
  at: number,
  who: PersonKey = 'head',
  saidBy = 'Her mother, by letter',
) => recordConsent(await coachAs(coast, who, at), { diver: coast.divers.here, purpose, given, saidBy })

/** A call, an attempt and an observation with one moment of video. */
function filmed(at: number, changes: Partial<ObservationItem> = {}) {
  const items = ratedAttempt(coast, {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': 3 },
  })
  const moments = [{ id: uuidv7({ msecs: at }), link: 'https://clips.example/a', start: 1, end: 4 }]
  return items.map((item) => (item.kind === 'observation' ? { ...item, moments, ...changes } : item))
}

const momentsSeenBy = (who: PersonKey) => countAs(coast.people[who], 'Moment', '"diverId" = $1', [coast.divers.here])
const momentsStored = () =>
  asRole('owner', async (owner) =>
    Number(
      (await owner.query('SELECT count(*) FROM "Moment" WHERE "diverId" = $1', [coast.divers.here])).rows[0].count,
    ),
  )
const results = (answers: Awaited<ReturnType<typeof sendAs>>) => answers.map(({ result }) => result)

describe('a consent to video', () => {
  it('when withdrawn hides at once, everywhere and in the database itself; given again shows; nothing is deleted', async () => {
    await sendAs(coast, 'assistant', noon + 5 * minute, filmed(noon))
    const shown = async () => ({
      page: (await readDiver(await officeAs(coast, 'head', noon), coast.divers.here))?.moments.length,
      deck: (await readSnapshot(await coachAs(coast, 'assistant', noon + 6 * minute), 'Ann')).recent.flatMap(
        ({ observation }) => observation.moments,
      ).length,
      rows: [await momentsSeenBy('head'), await momentsSeenBy('assistant'), await momentsSeenBy('reviewer')],
    })
    expect(await shown()).toEqual({ page: 1, deck: 1, rows: [1, 1, 1] })
    expect(await say('video', false, noon + 10 * minute)).toMatchObject({ ok: true })
    expect(await shown()).toEqual({ page: 0, deck: 0, rows: [0, 0, 0] })
    expect(await momentsStored()).toBe(1)
    expect(await say('video', true, noon + 20 * minute)).toMatchObject({ ok: true })
    expect(await shown()).toEqual({ page: 1, deck: 1, rows: [1, 1, 1] })
  })

  it('missing costs the moment and never the rating: kept without it, and told so, also when it is sent again', async () => {
    await say('video', false, noon - minute)
    const items = filmed(noon)
    const answers = await sendAs(coast, 'assistant', noon + 5 * minute, items)
    expect(results(answers)).toEqual(['accepted', 'accepted', 'accepted'])
    const [moment] = (items[2] as ObservationItem).moments
    expect(answers[2]?.keptWithout).toEqual({
      moments: [moment?.id],
      message: expect.stringContaining('kept without its video'),
    })
    expect(await momentsStored()).toBe(0)
    const again = await sendAs(coast, 'assistant', noon + 6 * minute, items)
    expect(again[2]).toMatchObject({ result: 'known', keptWithout: { moments: [moment?.id] } })
    // Once it is given, a correction brings the moment.
    await say('video', true, noon + 10 * minute)
    const old = items[2] as ObservationItem
    const correction = {
      ...old,
      id: uuidv7(),
      moments: [{ ...old.moments[0], id: uuidv7() }],
      supersedes: { id: old.id, reason: 'With its video.' },
    }
    const [answer] = await sendAs(coast, 'assistant', noon + 15 * minute, [correction])
    expect(answer).toEqual({ id: correction.id, result: 'accepted' })
    expect(await momentsSeenBy('head')).toBe(1)
  })

  it('missing refuses an observation that is nothing but video, and keeps its attempt', async () => {
    await say('video', false, noon - minute)
    const items = filmed(noon, { ratings: {}, restAsExpected: false })
    const answers = await sendAs(coast, 'assistant', noon + 5 * minute, items)
    expect(results(answers)).toEqual(['accepted', 'accepted', 'refused'])
    expect(answers[2]).toMatchObject({ code: 'no consent', field: 'moments' })
  })

  it('is asked by the database too: no moment enters without it, whatever the code does', async () => {
    await say('video', false, noon - minute)
    const insert = asAccountRow(coast.people.head, (client) =>
      client.query(
        `INSERT INTO "Moment" ("id", "clubId", "diverId", "observationId", "link", "startMs", "commitment")
         VALUES ($1, $2, $3, $1, 'https://clips.example/a', 0, '')`,
        [uuidv7(), coast.clubs.here, coast.divers.here],
      ),
    )
    await expect(insert).rejects.toThrow(/row-level security/)
  })

  it('withdrawn while a batch comes in leaves no moment in sight', async () => {
    const [answers] = await Promise.all([
      sendAs(coast, 'assistant', noon + 5 * minute, filmed(noon)),
      say('video', false, noon + 5 * minute, 'secondHead'),
    ])
    expect(results(answers)).toEqual(['accepted', 'accepted', 'accepted'])
    expect(await momentsSeenBy('head')).toBe(0)
  })
})

describe('a consent to keep a record', () => {
  it('when withdrawn stops what is dived after it, and keeps what was dived before and comes in late', async () => {
    expect(await say('record', false, noon + 10 * minute)).toMatchObject({ ok: true })
    expect(results(await sendAs(coast, 'assistant', noon + 20 * minute, filmed(noon)))).toEqual([
      'accepted',
      'accepted',
      'accepted',
    ])
    const answers = await sendAs(coast, 'assistant', noon + 25 * minute, filmed(noon + 20 * minute))
    expect(answers[0]).toMatchObject({ result: 'refused', code: 'no consent' })
    expect(results(answers)).toEqual(['refused', 'refused', 'refused'])
    const snapshot = await readSnapshot(await coachAs(coast, 'assistant', noon + 30 * minute), 'Ann')
    expect(snapshot.divers[0]?.recordingStopped).toContain('withdrawn')
  })

  it('still lets a coach put right what stands already', async () => {
    const items = filmed(noon)
    await sendAs(coast, 'assistant', noon + 5 * minute, items)
    await say('record', false, noon + 10 * minute)
    const old = items[2] as ObservationItem
    const correction = { ...old, id: uuidv7(), moments: [], supersedes: { id: old.id, reason: 'Wrong number.' } }
    const late = { ...correction, observedAt: noon + 20 * minute }
    expect(results(await sendAs(coast, 'assistant', noon + 25 * minute, [late]))).toEqual(['accepted'])
  })
})

describe('recording a consent', () => {
  it('is for a head coach; a withdrawal for any coach of the club; nothing for another club', async () => {
    expect(await say('video', false, noon, 'elsewhere')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await say('video', false, noon, 'assistant', ' ')).toMatchObject({ refusal: { field: 'saidBy' } })
    expect(await say('video', false, noon, 'assistant')).toMatchObject({ ok: true })
    expect(await say('video', false, noon + minute, 'head')).toMatchObject({ refusal: { code: 'as it is' } })
    expect(await say('video', true, noon + minute, 'assistant')).toMatchObject({
      refusal: { code: 'not the head coach' },
    })
    expect(await say('video', true, noon + minute, 'head')).toMatchObject({ ok: true })
    const bare = asAccountRow(coast.people.assistant, (client) =>
      client.query(`INSERT INTO "Consent" VALUES ($1, $2, $3, 'video', true, $1, $4, now())`, [
        uuidv7(),
        coast.clubs.here,
        coast.divers.here,
        coast.people.assistant,
      ]),
    )
    await expect(bare).rejects.toThrow(/row-level security/)
  })

  it('counts in the order in which it was recorded, whatever the clocks say', async () => {
    await say('video', false, noon + 10 * minute)
    await say('video', true, noon)
    expect((await readSnapshot(await coachAs(coast, 'assistant', noon), 'Ann')).divers[0]?.video).toBe(true)
  })

  it('shows who said so to head coaches only', async () => {
    await say('video', false, noon)
    const latest = async (who: PersonKey) =>
      (await readSafety(await coachAs(coast, who, noon), coast.divers.here)).consents[0]
    expect(await latest('head')).toMatchObject({ given: false, saidBy: 'Her mother, by letter' })
    expect(await latest('assistant')).toMatchObject({ given: false, saidBy: null })
  })
})
