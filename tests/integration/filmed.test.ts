import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { asOf } from '../../lib/assessment/as-of'
import type { AttemptItem, DeckItem, ObservationItem } from '../../lib/assessment/deck/contract'
import { readWaiting } from '../../lib/assessment/store/filmed'
import { dropFilmed, linkFilmed } from '../../lib/assessment/store/link-filmed'
import { findMoment } from '../../lib/assessment/store/moments'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { findDiverFile } from '../../lib/assessment/store/records'
import { readSnapshot } from '../../lib/assessment/store/snapshot'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import { asAccount, closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { checkReadinessAsOwner } from '../support/check-readiness'
import { asRole } from '../support/database'
import {
  coachAs,
  makeCoast,
  minute,
  noon,
  type PersonKey,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

// "Filmed now" on the deck, and what becomes of it at the desk.
let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const later = noon + 60 * minute
const film = 'https://clips.example/0012.mp4'
const results = (answers: Awaited<ReturnType<typeof sendAs>>) => answers.map(({ result }) => result)

/** A rated attempt that was filmed a minute before it was kept. */
function filmed(at: number, clip: number, diver = coast.divers.here): DeckItem[] {
  const items = ratedAttempt(coast, {
    ...{ diver, skill: 'tread', place: 'poolside', at },
    ratings: { 'clear-water': 3 },
  })
  return items.map((item) => (item.kind === 'attempt' ? { ...item, filmed: { clip, at: at - minute } } : item))
}
const attemptIn = (items: readonly DeckItem[]): string => items[1]?.id ?? ''

async function mark(clip = 12, at = noon, who: PersonKey = 'assistant', diver = coast.divers.here): Promise<string> {
  const items = filmed(at, clip, diver)
  expect(results(await sendAs(coast, who, at + minute, items))).toEqual(['accepted', 'accepted', 'accepted'])
  return attemptIn(items)
}
const waits = async (who: PersonKey, at = later) => (await readWaiting(await coachAs(coast, who, at))).waiting
const link = async (attempt: string, who: PersonKey = 'assistant', at = later) =>
  linkFilmed(await coachAs(coast, who, at), [{ attempt, link: film, start: 2, end: 6.5 }])
const drop = async (attempt: string, who: PersonKey = 'assistant', at = later) =>
  dropFilmed(await coachAs(coast, who, at), attempt)
const video = async (given: boolean, at: number) =>
  recordConsent(await coachAs(coast, 'head', at), {
    ...{ diver: coast.divers.here, given, saidBy: 'Her mother' },
    purpose: 'video',
  })
async function recordOf(attempt: string, at = later) {
  const scope = await coachAs(coast, 'head', at)
  const file = await asAccount(scope.account, (tx) => findDiverFile(tx, scope, coast.divers.here))
  return file?.record.attempts.find(({ id }) => id === attempt)?.observations
}
const observationRows = (attempt: string) =>
  asRole('owner', async (owner) => {
    const found = await owner.query('SELECT * FROM "Observation" WHERE "attemptId" = $1 ORDER BY "id"', [attempt])
    return found.rows
  })
const moveDiver = (at: number) =>
  asRole('owner', async (owner) => {
    await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, new Date(at)])
    await owner.query('INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)', [
      ...[uuidv7(), coast.divers.here, coast.clubs.there, new Date(at)],
    ])
  })

describe('an attempt that is marked as filmed', () => {
  it('waits for its clip, for the coach who marked it and for her head coach, and counts for nothing yet', async () => {
    const attempt = await mark()
    for (const who of ['assistant', 'head'] as const)
      expect(await waits(who)).toMatchObject([
        { attempt, clip: 12, pair: 'tread@poolside', coach: coast.people.assistant, at: noon - minute, video: true },
      ])
    expect(await recordOf(attempt)).toMatchObject([{ moments: 0, linkedAt: null }])
    const { recent } = await readSnapshot(await coachAs(coast, 'assistant', later), 'Ann')
    expect(recent[0]?.attempt.filmed).toEqual({ clip: 12, at: noon - minute })
  })

  it('is known when it comes again, also twice at once; without the mark, as decks of before send it, it is another', async () => {
    const items = filmed(noon, 7)
    const twice = await Promise.all([1, 2].map(() => sendAs(coast, 'assistant', noon + minute, items)))
    expect(twice.map((answers) => answers[1]?.result).sort()).toEqual(['accepted', 'known'])
    expect(await sendAs(coast, 'assistant', noon + 2 * minute, items)).toEqual(
      items.map(({ id }) => ({ id, result: 'known' })),
    )
    expect(await waits('assistant')).toHaveLength(1)
    const { filmed: _, ...unmarked } = items[1] as AttemptItem
    expect((await sendAs(coast, 'assistant', noon + 3 * minute, [unmarked]))[0]).toMatchObject({
      code: 'same id, other content',
    })
    const old = ratedAttempt(coast, {
      ...{ diver: coast.divers.here, skill: 'tread', place: 'poolside', at: noon + 10 * minute },
      ratings: { 'clear-water': 3 },
    })
    expect(results(await sendAs(coast, 'assistant', noon + 11 * minute, old))).toEqual(old.map(() => 'accepted'))
    expect(await waits('assistant')).toHaveLength(1)
  })

  it('is put in the programme’s time where the phone’s clock is wrong', async () => {
    const scope = await coachAs(coast, 'assistant', noon + minute)
    const items = filmed(noon - 3_600_000, 3)
    // The phone is an hour slow: what it calls eleven is noon.
    expect(results(await syncDeck(scope, scope.at - 3_600_000, items))).toEqual(items.map(() => 'accepted'))
    expect((await waits('assistant')).map(({ at }) => at)).toEqual([noon - minute])
  })

  it.each([
    ['clip 0', { clip: 0, at: noon }],
    ['clip 12.5', { clip: 12.5, at: noon }],
    ['no time', { clip: 12 }],
    ['null', null],
  ])('is refused at its field when it is malformed: %s', async (_, wrong) => {
    const items = filmed(noon, 1).map((item) => (item.kind === 'attempt' ? { ...item, filmed: wrong } : item))
    const answers = await sendAs(coast, 'assistant', noon + minute, items)
    expect(answers[1]).toMatchObject({ result: 'refused', code: 'malformed', field: expect.stringContaining('filmed') })
    expect(await waits('assistant')).toEqual([])
  })

  it('is kept without its mark where there is no consent to video, told so each time', async () => {
    await video(false, noon - 5 * minute)
    const items = filmed(noon, 4)
    const without = { keptWithout: { moments: [], message: expect.stringContaining('Do not film') } }
    const first = await sendAs(coast, 'assistant', noon + minute, items)
    expect(first[1]).toMatchObject({ result: 'accepted', ...without })
    expect((await sendAs(coast, 'assistant', noon + 2 * minute, items))[1]).toMatchObject({
      result: 'known',
      ...without,
    })
    expect(await waits('assistant')).toEqual([])
  })
})

describe('a clip that is linked later', () => {
  it('is a moment of that view and counts, and leaves the observation as it was', async () => {
    const attempt = await mark()
    const before = await observationRows(attempt)
    expect(await link(attempt)).toMatchObject({ ok: true })
    expect(await observationRows(attempt)).toEqual(before)
    expect(await recordOf(attempt)).toMatchObject([{ moments: 0, linkedAt: later }])
    expect(await waits('assistant')).toEqual([])
    const [row] = await asRole('owner', async (owner) => (await owner.query('SELECT "id" FROM "Moment"')).rows)
    expect(await findMoment(await coachAs(coast, 'head', later + minute), row?.id)).toMatchObject({
      ...{ pair: 'tread@poolside', link: film, start: 2, end: 6.5 },
    })
    expect((await checkReadinessAsOwner(coast, later)).differences).toEqual([])
    const { recent } = await readSnapshot(await coachAs(coast, 'assistant', later + minute), 'Ann')
    expect(recent[0]?.attempt.filmed).toBeUndefined()
    expect(recent[0]?.observation.moments).toMatchObject([{ link: film, start: 2, end: 6.5 }])
  })

  it('stays where a phone corrects the observation afterwards, not knowing of it', async () => {
    const items = filmed(noon, 12)
    await sendAs(coast, 'assistant', noon + minute, items)
    await link(attemptIn(items))
    const old = items[2] as ObservationItem
    const correction = { ...old, id: uuidv7(), supersedes: { id: old.id, reason: 'Seen again.' } }
    expect(await sendAs(coast, 'assistant', later + minute, [correction])).toMatchObject([{ result: 'accepted' }])
    const views = await recordOf(attemptIn(items), later + 2 * minute)
    expect(views?.find(({ id }) => id === correction.id)).toMatchObject({ linkedAt: later })
  })

  it('may be linked by the head coach for the coach who marked it, and by nobody else', async () => {
    const attempt = await mark()
    const own = await mark(1, noon + 5 * minute, 'head')
    expect((await waits('assistant')).map((one) => one.attempt)).toEqual([attempt])
    expect(await link(own, 'assistant')).toMatchObject({ refusal: { code: 'not waiting' } })
    expect(await link(attempt, 'elsewhere')).toMatchObject({ refusal: { code: 'not waiting' } })
    expect(await link(attempt, 'secondHead')).toMatchObject({ ok: true })
    expect(await recordOf(attempt)).toMatchObject([{ coach: coast.people.assistant, linkedAt: later }])
  })

  it('is linked once, also by two at once, and never with another one of the list that fails', async () => {
    const attempt = await mark()
    const tries = await Promise.all([link(attempt, 'assistant'), link(attempt, 'head')])
    expect(tries.filter(({ ok }) => ok)).toHaveLength(1)
    expect(tries.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'not waiting' } })
    const other = await mark(13, noon + 10 * minute)
    const scope = await coachAs(coast, 'assistant', later + minute)
    const clip = { link: film, start: 0, end: null }
    const pair = [
      { attempt: other, ...clip },
      { attempt, ...clip },
    ]
    expect(await linkFilmed(scope, pair)).toMatchObject({ refusal: { code: 'not waiting' } })
    expect(await waits('assistant', later + minute)).toMatchObject([{ attempt: other }])
  })

  it('cannot be linked while the consent to video is withdrawn, and is told why; given again it can', async () => {
    const attempt = await mark()
    await video(false, noon + 10 * minute)
    expect(await waits('assistant')).toMatchObject([{ attempt, video: false }])
    expect(await link(attempt)).toMatchObject({ refusal: { code: 'no consent', message: /Mira Oake/ } })
    await video(true, later + minute)
    expect(await link(attempt, 'assistant', later + 2 * minute)).toMatchObject({ ok: true })
    await video(false, later + 5 * minute)
    // What was seen stays seen.
    expect(await recordOf(attempt, later + 6 * minute)).toMatchObject([{ linkedAt: later + 2 * minute }])
  })

  it('does not exist as of a time before it was linked', async () => {
    const attempt = await mark()
    await link(attempt)
    const scope = await coachAs(coast, 'head', later + minute)
    const file = await asAccount(scope.account, (tx) => findDiverFile(tx, scope, coast.divers.here))
    const then = file && asOf(file.record, { day: 20_000, instant: later - 1 })
    expect(then?.attempts[0]?.observations[0]?.linkedAt).toBeNull()
  })

  it('waits until the rating of it has come in', async () => {
    const items = filmed(noon, 2)
    await sendAs(coast, 'assistant', noon + minute, items.slice(0, 2))
    expect(await link(attemptIn(items))).toMatchObject({ refusal: { code: 'not rated' } })
    await sendAs(coast, 'assistant', noon + 2 * minute, items.slice(2))
    expect(await link(attemptIn(items))).toMatchObject({ ok: true })
  })
})

it('what was not filmed after all goes off the list, once, and is not linked any more', async () => {
  const attempt = await mark()
  expect(await drop(attempt, 'elsewhere')).toMatchObject({ refusal: { code: 'not waiting' } })
  expect(await drop(attempt)).toMatchObject({ ok: true })
  expect(await waits('head')).toEqual([])
  for (const again of [await drop(attempt, 'head'), await link(attempt)])
    expect(again).toMatchObject({ refusal: { code: 'not waiting' } })
})

describe('who sees and writes the rows', () => {
  const tables = ['FilmedAttempt', 'FilmedOutcome'] as const
  const seen = (who: PersonKey, table: string) =>
    countAs(coast.people[who], table, '"diverId" = $1', [coast.divers.here])

  it('another club nothing; the programme only what was linked; nobody without an account', async () => {
    await link(await mark())
    for (const table of tables) {
      expect(await seen('head', table)).toBe(1)
      expect(await seen('elsewhere', table)).toBe(0)
      expect(await countAs(null, table)).toBe(0)
    }
    expect([await seen('reviewer', 'FilmedAttempt'), await seen('reviewer', 'FilmedOutcome')]).toEqual([0, 1])
  })

  it('when the diver moves her new head coach links or drops it, and her old club does not', async () => {
    const attempt = await mark()
    await moveDiver(noon + 30 * minute)
    for (const who of ['assistant', 'head'] as const) {
      expect(await waits(who)).toEqual([])
      expect(await link(attempt, who)).toMatchObject({ refusal: { code: 'not waiting' } })
    }
    expect(await waits('elsewhere')).toMatchObject([{ attempt }])
    expect(await link(attempt, 'elsewhere')).toMatchObject({ ok: true })
  })

  const write = (who: PersonKey, sql: string, values: unknown[]) =>
    asAccountRow(coast.people[who], (client) => client.query(sql, values))
  const placeholder = (who: PersonKey, attempt: string, coach = coast.people[who]) =>
    write(
      who,
      `INSERT INTO "FilmedAttempt" ("attemptId", "clubId", "diverId", "coachId", "clip", "filmedAt", "offsetMs", "receivedAt")
       VALUES ($1, $2, $3, $4, 1, now(), 0, now())`,
      [attempt, coast.clubs.here, coast.divers.here, coach],
    )
  const outcome = (who: PersonKey, attempt: string, moment: string | null = null) =>
    write(
      who,
      `INSERT INTO "FilmedOutcome" ("attemptId", "clubId", "diverId", "coachId", "outcome", "momentId", "by", "at")
       VALUES ($1, $2, $3, $4, $5, $6, $7, now())`,
      [
        ...[attempt, coast.clubs.here, coast.divers.here, coast.people.assistant],
        ...[moment ? 'linked' : 'dropped', moment, coast.people[who]],
      ],
    )

  it('are refused by the database itself: another club, another coach’s name, another attempt’s moment, no consent', async () => {
    const unmarked = ratedAttempt(coast, {
      ...{ diver: coast.divers.here, skill: 'tread', place: 'poolside', at: noon + 5 * minute },
      ratings: { 'clear-water': 3 },
    })
    await sendAs(coast, 'assistant', noon + 6 * minute, unmarked)
    const plain = attemptIn(unmarked)
    const [one, two] = [await mark(1), await mark(2, noon + 10 * minute)]
    await link(two)
    const [{ id: moment }] = await asRole('owner', async (o) => (await o.query('SELECT "id" FROM "Moment"')).rows)
    const policy = /row-level security/
    await expect(placeholder('elsewhere', plain)).rejects.toThrow(policy)
    await expect(placeholder('head', plain)).rejects.toThrow(policy)
    await expect(placeholder('assistant', plain, coast.people.head)).rejects.toThrow(policy)
    await expect(outcome('elsewhere', one)).rejects.toThrow(policy)
    await expect(outcome('assistant', one, moment)).rejects.toThrow(policy)
    await expect(outcome('assistant', plain)).rejects.toThrow(policy)
    await placeholder('assistant', plain)
    await outcome('head', one)
    await video(false, later)
    await expect(placeholder('assistant', plain)).rejects.toThrow(policy)
    await outcome('head', one)
  })

  it.each(tables)('%s is never changed, not by its owner either', async (table) => {
    await link(await mark())
    await asRole('owner', async (owner) => {
      await expect(owner.query(`UPDATE "${table}" SET "coachId" = "coachId"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`DELETE FROM "${table}"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/append-only/)
    })
  })
})
