import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { recordIncident, releaseIncident } from '../../lib/assessment/store/desk-incident'
import { noteGrowth } from '../../lib/assessment/store/growth'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { readSafety } from '../../lib/assessment/store/safety'
import { standDown } from '../../lib/assessment/store/stand-down'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { asRole } from '../support/database'
import { coachAs, dayLength, makeCoast, minute, noon, type PersonKey, type SmallCoast } from '../support/small-club'

const everybody = ['assistant', 'head', 'secondHead', 'elsewhere', 'reviewer', 'lead'] as const
let coast: SmallCoast

/** Of the diver who is here: an incident cleared after a knock, a stand-down with its reason, growth, a consent. */
beforeAll(async () => {
  coast = await makeCoast()
  const diver = coast.divers.here
  const [assistant, head] = [await coachAs(coast, 'assistant', noon), await coachAs(coast, 'head', noon)]
  const day = Math.floor(noon / dayLength)
  const knock = await recordIncident(assistant, {
    diver,
    pair: 'tread@poolside',
    what: 'knock to the head',
    note: 'Hit the tip.',
    at: () => noon - minute,
  })
  if (!knock.ok) throw new Error(knock.refusal.message)
  const done = [
    await releaseIncident(head, { diver, incident: knock.id, reason: 'Rested.', statement: 'Doctor of Tuesday.' }),
    await standDown(head, { diver, closes: 'new', from: day, until: null, reason: 'A safeguarding matter.' }),
    await noteGrowth(assistant, { diver, notedOn: day, words: 'Three centimetres.' }),
    await recordConsent(assistant, { diver, purpose: 'video', given: false, saidBy: 'Her father' }),
  ]
  expect(done.map(({ ok }) => ok)).toEqual([true, true, true, true])
})
afterAll(closeDatabase)

const seers = async (table: string, where = 'true'): Promise<PersonKey[]> => {
  const counts = await Promise.all(
    everybody.map(async (who) => [
      who,
      await countAs(coast.people[who], table, `"diverId" = $1 AND ${where}`, [coast.divers.here]),
    ]),
  )
  return counts.flatMap(([who, count]) => (count === 0 ? [] : [who as PersonKey]))
}

describe('what keeps a diver safe', () => {
  it.each([
    ['Incident', ['assistant', 'head', 'secondHead', 'reviewer', 'lead']],
    ['Release', ['assistant', 'head', 'secondHead', 'reviewer', 'lead']],
    ['StandDown', ['assistant', 'head', 'secondHead', 'reviewer', 'lead']],
    ['GrowthNote', ['assistant', 'head', 'secondHead']],
    ['Consent', ['assistant', 'head', 'secondHead']],
  ])('%s is seen by her club, and the programme where it has a use for it, and by nobody else', async (table, who) => {
    expect(await seers(table)).toEqual(who)
    expect(await countAs(null, table)).toBe(0)
  })

  it('has words that only head coaches of her club read, though others wrote them', async () => {
    expect(await seers('Words', `"readers" = 'all'`)).toEqual(['assistant', 'head', 'secondHead', 'reviewer', 'lead'])
    expect(await seers('Words', `"readers" = 'head'`)).toEqual(['head', 'secondHead'])
  })

  it('is written by who may, about her club’s divers, in her own name', async () => {
    const { here } = coast.divers
    const insert = (who: PersonKey, sql: string, values: unknown[]) =>
      asAccountRow(coast.people[who], (client) => client.query(sql, values))
    const growth = `INSERT INTO "GrowthNote" VALUES ($1, $2, $3, now(), $4, now(), NULL)`
    const down = `INSERT INTO "StandDown" ("id", "clubId", "diverId", "closes", "from", "by", "at", "ledgerSeq")
                  VALUES ($1, $2, $3, 'new', now(), $4, now(), 0)`
    const release = `INSERT INTO "Release" ("id", "clubId", "diverId", "kind", "subjectId", "by", "at", "reasonId")
                     VALUES ($1, $2, $3, 'incident', $1, $4, now(), $1)`
    const row = (by: PersonKey) => [uuidv7(), coast.clubs.here, here, coast.people[by]]
    for (const sql of [growth, down, release]) {
      await expect(insert('elsewhere', sql, row('elsewhere'))).rejects.toThrow(/row-level security/)
      await expect(insert('head', sql, row('secondHead'))).rejects.toThrow(/row-level security/)
      await insert('head', sql, row('head'))
    }
    for (const sql of [down, release])
      await expect(insert('assistant', sql, row('assistant'))).rejects.toThrow(/row-level security/)
  })

  it('lets nobody but a head coach of hers end a stand-down, in the database itself', async () => {
    const end = async (who: PersonKey) =>
      asAccountRow(coast.people[who], async (client) => {
        const ended = `UPDATE "StandDown" SET "until" = now(), "endedAt" = now(), "endedBy" = $2 WHERE "diverId" = $1`
        return (await client.query(ended, [coast.divers.here, coast.people[who]])).rowCount
      })
    expect([await end('assistant'), await end('elsewhere'), await end('reviewer')]).toEqual([0, 0, 0])
    expect(await end('head')).toBe(1)
  })

  it('goes along when she moves: the new club sees all, the old one its own rows, no head’s words and no consent', async () => {
    const moved = new Date(noon + 30 * minute)
    await asRole('owner', async (owner) => {
      await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, moved])
      await owner.query('INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)', [
        uuidv7(),
        coast.divers.here,
        coast.clubs.there,
        moved,
      ])
    })
    expect(await seers('Consent')).toEqual(['elsewhere'])
    expect(await seers('GrowthNote')).toEqual(['elsewhere'])
    expect(await seers('Words', `"readers" = 'head'`)).toEqual(['elsewhere'])
    // Who recorded the incident, and who cleared it and set the stand-down, keep sight of their own rows.
    expect(await seers('Incident')).toEqual(['assistant', 'elsewhere', 'reviewer', 'lead'])
    expect(await seers('StandDown')).toEqual(['head', 'elsewhere', 'reviewer', 'lead'])
    const there = await readSafety(await coachAs(coast, 'elsewhere', noon + 40 * minute), coast.divers.here)
    expect(there.standDowns).toMatchObject([{ reason: 'A safeguarding matter.' }])
    expect(there.incidents).toMatchObject([{ release: { statement: 'Doctor of Tuesday.' } }])
    const here = await readSafety(await coachAs(coast, 'head', noon + 40 * minute), coast.divers.here)
    expect(here.standDowns).toMatchObject([{ reason: null }])
    expect([here.growth, here.consents]).toEqual([[], []])
  })
})
