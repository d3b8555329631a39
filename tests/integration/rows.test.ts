import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow } from '../support/account-rows'
import { asRole } from '../support/database'
import { makeCoast, minute, noon, ratedAttempt, type SmallCoast, sendAs } from '../support/small-club'

const appendOnly = [
  'Call',
  'Attempt',
  'Observation',
  'SignOff',
  'Revocation',
  'Recognition',
  'Decision',
  'Incident',
  'Release',
  'Consent',
  'GrowthNote',
  'MomentMark',
  'MomentMeasure',
  'GuideOpening',
  'Exemplar',
  'ExemplarWithdrawal',
  'Ledger',
  'Edition',
] as const
const partitions = ['Call_default', 'Attempt_default', 'Observation_default'] as const

let coast: SmallCoast
beforeAll(async () => {
  coast = await makeCoast()
  for (const [who, diver] of [
    ['assistant', coast.divers.here],
    ['elsewhere', coast.divers.there],
  ] as const) {
    const items = ratedAttempt(coast, {
      diver,
      skill: 'tread',
      place: 'poolside',
      at: noon,
      ratings: { 'clear-water': 3 },
    })
    const answers = await sendAs(coast, who, noon + 5 * minute, items)
    expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  }
})
afterAll(closeDatabase)

const diversIn = (account: string | null, table: string): Promise<string[]> =>
  asAccountRow(account, async (client) => {
    const { rows } = await client.query<{ diverId: string }>(`SELECT DISTINCT "diverId" FROM "${table}"`)
    return rows.map(({ diverId }) => diverId)
  })

describe('what has happened', () => {
  it.each(appendOnly)('%s is never changed, not by its owner either', async (table) => {
    await asRole('owner', async (owner) => {
      const column = table === 'Ledger' ? 'kind' : 'id'
      await expect(owner.query(`UPDATE "${table}" SET "${column}" = "${column}"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`DELETE FROM "${table}"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/append-only/)
    })
  })

  it.each(partitions)('%s is neither changed nor read past its parent', async (table) => {
    await asRole('owner', async (owner) => {
      await expect(owner.query(`DELETE FROM "${table}"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/append-only/)
    })
    await expect(
      asAccountRow(coast.people.assistant, (client) => client.query(`SELECT * FROM "${table}"`)),
    ).rejects.toThrow(/permission denied/)
  })

  it('has a ledger without gaps, whose hashes are those of its payloads, and that takes no entry by hand', async () => {
    await asRole('owner', async (owner) => {
      await expect(
        owner.query('INSERT INTO "Ledger" VALUES ($1, 99, $2, 1, $3, $4, now())', [
          coast.programme,
          'decided',
          '{}',
          'x',
        ]),
      ).rejects.toThrow(/append_ledger|check/)
    })
    await expect(
      asAccountRow(coast.people.head, (client) =>
        client.query('INSERT INTO "Ledger" VALUES ($1, 99, $2, 1, $3, $4, now())', [
          coast.programme,
          'decided',
          '{}',
          'x',
        ]),
      ),
    ).rejects.toThrow(/permission denied/)
  })

  it('lets a membership end once, and changes nothing else of it', async () => {
    await asRole('owner', async (owner) => {
      const { rows } = await owner.query('SELECT "id" FROM "Membership" WHERE "accountId" = $1', [
        coast.people.secondHead,
      ])
      const id = rows[0]?.id
      await expect(
        owner.query('UPDATE "Membership" SET "role" = $2 WHERE "id" = $1', [id, 'assistant']),
      ).rejects.toThrow(/only Membership.to/)
      await owner.query('UPDATE "Membership" SET "to" = now() WHERE "id" = $1', [id])
      await expect(owner.query('UPDATE "Membership" SET "to" = NULL WHERE "id" = $1', [id])).rejects.toThrow(/set once/)
    })
  })
})

describe('who sees which row', () => {
  const tables = ['Diver', 'DiverWords', 'Call', 'Attempt', 'Observation'] as const
  const column = (table: string) => (table === 'Diver' ? 'id' : 'diverId')

  it('nobody, without an account', async () => {
    for (const table of tables) {
      const rows = await asAccountRow(null, (client) => client.query(`SELECT "${column(table)}" FROM "${table}"`))
      expect(rows.rows).toEqual([])
    }
  })

  it('a coach her own club, another club its own, the programme both', async () => {
    for (const table of ['Call', 'Attempt', 'Observation', 'DiverWords']) {
      expect(await diversIn(coast.people.head, table)).toEqual([coast.divers.here])
      expect(await diversIn(coast.people.elsewhere, table)).toEqual([coast.divers.there])
      expect((await diversIn(coast.people.reviewer, table)).sort()).toEqual(Object.values(coast.divers).sort())
    }
  })

  it('no coach writes about another club’s diver, nor in another coach’s name', async () => {
    const insert = (diver: string, coach: string) =>
      asAccountRow(coast.people.assistant, (client) =>
        client.query(
          `INSERT INTO "Call" ("id", "clubId", "diverId", "skill", "place", "atLevel", "count", "calledAt", "receivedAt", "coachId", "deviceId", "offsetMs", "contentDigest")
           VALUES ($1, $2, $3, 'tread', 'poolside', 'one', 1, now(), now(), $4, $1, 0, '')`,
          [uuidv7(), coast.clubs.here, diver, coach],
        ),
      )
    await expect(insert(coast.divers.there, coast.people.assistant)).rejects.toThrow(/row-level security/)
    await expect(insert(coast.divers.here, coast.people.head)).rejects.toThrow(/row-level security/)
    await insert(coast.divers.here, coast.people.assistant)
  })

  it('reads no password, and takes no other role', async () => {
    await expect(
      asAccountRow(coast.people.lead, (client) => client.query('SELECT "passwordHash" FROM "Account"')),
    ).rejects.toThrow(/permission denied/)
    await expect(asAccountRow(coast.people.lead, (client) => client.query('SET ROLE app_owner'))).rejects.toThrow(
      /permission denied/,
    )
    await expect(asAccountRow(coast.people.lead, (client) => client.query('SELECT * FROM "Session"'))).rejects.toThrow(
      /permission denied/,
    )
  })

  it('follows the diver when she moves: the new club sees all of her record, the old one what it wrote itself', async () => {
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
    expect((await diversIn(coast.people.elsewhere, 'Attempt')).sort()).toEqual(Object.values(coast.divers).sort())
    expect(await diversIn(coast.people.head, 'Attempt')).toEqual([])
    expect(await diversIn(coast.people.head, 'DiverWords')).toEqual([])
    expect(await diversIn(coast.people.assistant, 'Attempt')).toEqual([coast.divers.here])
    const later = ratedAttempt(coast, {
      diver: coast.divers.here,
      skill: 'tread',
      place: 'poolside',
      at: noon + 60 * minute,
      ratings: { 'clear-water': 3 },
    })
    const answers = await sendAs(coast, 'elsewhere', noon + 65 * minute, later)
    expect(answers.map(({ result, message }) => message ?? result)).toEqual(['accepted', 'accepted', 'accepted'])
    const seen = await asAccountRow(coast.people.assistant, (client) =>
      client.query('SELECT "id" FROM "Attempt" WHERE "diverId" = $1', [coast.divers.here]),
    )
    expect(seen.rows.map(({ id }) => id)).not.toContain(later[1]?.id)
  })
})
