import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { setGrant, setOpening } from '../../lib/assessment/store/grants'
import { keepMark } from '../../lib/assessment/store/marks'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { asRole } from '../support/database'
import { filmedAttempt, moveDiver } from '../support/moment-rows'
import { coachAs, makeCoast, minute, noon, officeAs, type PersonKey, type SmallCoast } from '../support/small-club'

const everybody = ['assistant', 'head', 'secondHead', 'elsewhere', 'reviewer', 'lead'] as const
const tables = ['MomentMark', 'MomentMeasure'] as const
let coast: SmallCoast
let moment: string
let measure: string

const insertMeasure = `INSERT INTO "MomentMeasure" ("id", "momentId", "coachId", "inputs", "results", "measuredAt")
  VALUES ($1, $2, $3, '{}', '[]', now())`
const takeBack = `INSERT INTO "MomentMeasure" ("id", "momentId", "coachId", "takesBackId", "measuredAt")
  VALUES ($1, $2, $3, $4, now())`

/** A moment of the diver who is here, with a mark and a measure by the assistant. */
beforeEach(async () => {
  coast = await makeCoast()
  moment = await filmedAttempt(coast, noon)
  const assistant = await coachAs(coast, 'assistant', noon + 10 * minute)
  const kept = await keepMark(assistant, { moment, key: 'flight', atMs: 1017, frameUs: 16_667 })
  expect(kept).toMatchObject({ ok: true })
  measure = uuidv7()
  await asRole('owner', (owner) => owner.query(insertMeasure, [measure, moment, coast.people.assistant]))
})
afterAll(closeDatabase)

async function seers(table: string): Promise<PersonKey[]> {
  const counts = await Promise.all(
    everybody.map(async (who) => [who, await countAs(coast.people[who], table, '"momentId" = $1', [moment])] as const),
  )
  return counts.flatMap(([who, count]) => (count === 0 ? [] : [who]))
}
const momentSeers = async (): Promise<PersonKey[]> => {
  const counts = await Promise.all(
    everybody.map(async (who) => [who, await countAs(coast.people[who], 'Moment', '"id" = $1', [moment])] as const),
  )
  return counts.flatMap(([who, count]) => (count === 0 ? [] : [who]))
}

describe.each(tables)('%s', (table) => {
  it('is seen by whoever sees the moment, and by nobody without an account', async () => {
    expect(await seers(table)).toEqual(['assistant', 'head', 'secondHead', 'reviewer', 'lead'])
    expect(await seers(table)).toEqual(await momentSeers())
    expect(await countAs(null, table)).toBe(0)
  })

  it('goes with the diver to her next club, out of sight of the last, its writer too', async () => {
    await moveDiver(coast, noon + 20 * minute)
    expect(await seers(table)).toEqual(['elsewhere', 'reviewer', 'lead'])
    expect(await seers(table)).toEqual(await momentSeers())
  })

  it('is gone without consent to video and back with it', async () => {
    const withdrawn = { diver: coast.divers.here, purpose: 'video', given: false, saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'head', noon + 20 * minute), withdrawn)
    expect(await seers(table)).toEqual([])
    await recordConsent(await coachAs(coast, 'head', noon + 30 * minute), { ...withdrawn, given: true })
    expect(await seers(table)).toHaveLength(5)
  })

  it('is out of everybody’s sight once the moment’s link was erased', async () => {
    await asRole('owner', (owner) => owner.query('UPDATE "Moment" SET "link" = NULL WHERE "id" = $1', [moment]))
    expect(await seers(table)).toEqual([])
  })

  it('is seen by a coach of another club while the attempt is granted to her, who writes none', async () => {
    const [{ attemptId: attempt }] = await asRole('owner', async (owner) => {
      const { rows } = await owner.query<{ attemptId: string }>(
        'SELECT o."attemptId" FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId" WHERE m."id" = $1',
        [moment],
      )
      return rows as [{ attemptId: string }]
    })
    await setOpening(await officeAs(coast, 'lead', noon + 20 * minute), true)
    const grant = { attempt, coach: coast.people.elsewhere, granted: true }
    expect(await setGrant(await coachAs(coast, 'head', noon + 20 * minute), grant)).toMatchObject({ ok: true })
    expect(await seers(table)).toEqual(['assistant', 'head', 'secondHead', 'elsewhere', 'reviewer', 'lead'])
    expect(await seers(table)).toEqual(await momentSeers())
    const mark = { moment, key: 'flight', atMs: 1000, frameUs: null }
    expect(await keepMark(await coachAs(coast, 'elsewhere', noon + 30 * minute), mark)).toMatchObject({ ok: false })
    const own = [uuidv7(), moment, coast.people.elsewhere]
    await expect(asAccountRow(coast.people.elsewhere, (client) => client.query(insertMeasure, own))).rejects.toThrow(
      /row-level security/,
    )
  })
})

describe('a measure', () => {
  const write = (who: PersonKey, sql: string, values: unknown[]) =>
    asAccountRow(coast.people[who], (client) => client.query(sql, values))

  it('is written by coaches of the diver’s club, in their own name', async () => {
    await write('head', insertMeasure, [uuidv7(), moment, coast.people.head])
    for (const [who, as] of [
      ['head', 'assistant'],
      ['elsewhere', 'elsewhere'],
      ['reviewer', 'reviewer'],
    ] as const)
      await expect(write(who, insertMeasure, [uuidv7(), moment, coast.people[as]])).rejects.toThrow(
        /row-level security/,
      )
  })

  it('is taken back once, by the coach who took it', async () => {
    const row = (who: PersonKey) => [uuidv7(), moment, coast.people[who], measure]
    await write('assistant', takeBack, row('assistant'))
    await expect(write('head', takeBack, row('head'))).rejects.toThrow(/by the coach who took it/)
    await asRole('owner', (owner) => owner.query(takeBack, row('assistant')))
    await expect(write('assistant', takeBack, row('assistant'))).rejects.toThrow(/unique/)
  })
})
