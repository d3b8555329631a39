import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDatabase } from '../../lib/platform/db'
import { readLeavers } from '../../lib/reports/store/leavers'
import { insertDiver, insertDiverMembership } from '../../seed/builders/people'
import { asRole } from '../support/database'
import { dayLength, makeCoast, noon, officeAs, type PersonKey, type SmallCoast } from '../support/small-club'

let coast: SmallCoast
let other: SmallCoast
const left = new Date(noon - 20 * dayLength)

/** A diver who was in the clubs one after the other, each until the day given. */
async function insertPast(stays: readonly (readonly [club: string, from: Date, to: Date | null])[]): Promise<void> {
  await asRole('owner', async (owner) => {
    const id = uuidv7()
    const words = { givenName: 'Lior', familyName: 'Sand', bornOn: '2013-02-01' }
    await insertDiver(owner, { id, programmeId: coast.programme, ...words, createdAt: new Date(0) })
    for (const [clubId, from, to] of stays) {
      const stay = uuidv7()
      await insertDiverMembership(owner, { id: stay, diverId: id, clubId, from })
      if (to) await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "id" = $1', [stay, to])
    }
  })
}

beforeAll(async () => {
  coast = await makeCoast()
  other = await makeCoast()
  const { here, there } = coast.clubs
  const began = new Date(noon - 300 * dayLength)
  await insertPast([[here, began, left]])
  // Moved, came back, and will leave only later: none of them has left.
  await insertPast([
    [here, began, left],
    [there, left, null],
  ])
  await insertPast([
    [here, began, new Date(noon - 100 * dayLength)],
    [here, left, null],
  ])
  await insertPast([[there, began, new Date(noon + dayLength)]])
})
afterAll(closeDatabase)

describe('who left the programme', () => {
  it.each<PersonKey>(['reviewer', 'lead'])('is counted by club and day for the %s, without a name', async (who) => {
    expect(await readLeavers(await officeAs(coast, who, noon))).toEqual([
      { club: coast.clubs.here, at: left.getTime() },
    ])
    expect(await readLeavers(await officeAs(coast, who, noon + 2 * dayLength))).toHaveLength(2)
    // The day before, it was the one who has since come back.
    const before = await readLeavers(await officeAs(coast, who, left.getTime() - 1))
    expect(before).toEqual([{ club: coast.clubs.here, at: noon - 100 * dayLength }])
  })

  it.each<PersonKey>(['head', 'assistant', 'elsewhere'])('is nothing to the %s coach', async (who) => {
    expect(await readLeavers(await officeAs(coast, who, noon))).toEqual([])
  })

  it('is nothing to another programme', async () => {
    const foreign = { ...(await officeAs(other, 'reviewer', noon)), programme: coast.programme }
    expect(await readLeavers(foreign)).toEqual([])
  })
})
