import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { listComparable } from '../../lib/assessment/store/comparable'
import { findMoment } from '../../lib/assessment/store/moments'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { filmedAttempt, moveDiver } from '../support/moment-rows'
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

let coast: SmallCoast
/** Two of the diver who is here, one of the diver who is there: the same skill. */
let moments: { readonly old: string; readonly late: string; readonly there: string }

async function filmedThere(at: number): Promise<string> {
  const id = uuidv7({ msecs: at })
  const dive = { diver: coast.divers.there, skill: '101C', place: '1m', at, ratings: { 'hands-locked': 2 } } as const
  const items = ratedAttempt(coast, dive).map((item) =>
    item.kind === 'observation'
      ? { ...item, moments: [{ id, link: '/media/clips/101b-sound.webm', start: 0.3, end: 2.6 }] }
      : item,
  )
  const answers = await sendAs(coast, 'elsewhere', at + 5 * minute, items)
  expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  return id
}

beforeEach(async () => {
  coast = await makeCoast()
  const old = await filmedAttempt(coast, noon)
  const late = await filmedAttempt(coast, noon + 10 * minute)
  moments = { old, late, there: await filmedThere(noon + 5 * minute) }
})
afterAll(closeDatabase)

const later = noon + 60 * minute
const listed = async (who: PersonKey, skill = '101C') =>
  (await listComparable(await coachAs(coast, who, later), skill)).map(({ id }) => id)

describe('what can be compared', () => {
  it('is every moment of the skill by divers of the coach’s clubs, oldest first, with what was rated', async () => {
    for (const who of ['assistant', 'head'] as const) expect(await listed(who)).toEqual([moments.old, moments.late])
    expect(await listed('elsewhere')).toEqual([moments.there])
    expect(await listed('head', 'tread')).toEqual([])
    const [first] = await listComparable(await coachAs(coast, 'head', later), '101C')
    expect(first).toMatchObject({ place: '1m', ratings: [3], at: noon, diver: { id: coast.divers.here } })
  })

  it('is nothing of another club, in the list or by its id beside one of one’s own', async () => {
    const head = await coachAs(coast, 'head', later)
    expect(await findMoment(head, moments.old)).not.toBeNull()
    expect(await findMoment(head, moments.there)).toBeNull()
    const elsewhere = await coachAs(coast, 'elsewhere', later)
    expect(await findMoment(elsewhere, moments.there)).not.toBeNull()
    expect(await findMoment(elsewhere, moments.old)).toBeNull()
  })

  it('holds both divers’ moments once they are in one club, and none of one who gave no consent to video', async () => {
    await moveDiver(coast, noon + 20 * minute)
    expect(await listed('elsewhere')).toEqual([moments.old, moments.there, moments.late])
    expect(await listed('head')).toEqual([])
    const withdrawn = { diver: coast.divers.here, purpose: 'video', given: false, saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'elsewhere', noon + 30 * minute), withdrawn)
    expect(await listed('elsewhere')).toEqual([moments.there])
    expect(await findMoment(await coachAs(coast, 'elsewhere', later), moments.old)).toBeNull()
  })

  it('is no moment whose link was erased', async () => {
    await asRole('owner', (owner) => owner.query('UPDATE "Moment" SET "link" = NULL WHERE "id" = $1', [moments.old]))
    expect(await listed('head')).toEqual([moments.late])
  })
})
