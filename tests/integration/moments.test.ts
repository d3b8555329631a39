import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { findMoment } from '../../lib/assessment/store/moments'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { closeDatabase } from '../../lib/platform/db'
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

let coast: SmallCoast
let moment: string
const film = '/media/clips/101b-sound.webm'
const link = `https://films.example/${uuidv7()}.mp4`

async function send(at: number, from: string): Promise<string> {
  const id = uuidv7({ msecs: at })
  const dive = {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': 3 },
  } as const
  const items = ratedAttempt(coast, dive).map((item) =>
    item.kind === 'observation' ? { ...item, moments: [{ id, link: from, start: 1.5, end: 4 }] } : item,
  )
  const answers = await sendAs(coast, 'assistant', at + 5 * minute, items)
  expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  return id
}

beforeEach(async () => {
  coast = await makeCoast()
  moment = await send(noon, film)
})
afterAll(closeDatabase)

const asked = async (who: PersonKey, id = moment) => findMoment(await coachAs(coast, who, noon + 30 * minute), id)

describe('a moment', () => {
  it('is found by the coaches of the diver’s club, with what it shows', async () => {
    for (const who of ['assistant', 'head'] as const)
      expect(await asked(who)).toMatchObject({ pair: 'tread@poolside', link: film, start: 1.5, end: 4 })
    expect(await asked('head', await send(noon + 10 * minute, link))).toMatchObject({ link })
  })

  it('does not exist for another club, nor under another id', async () => {
    expect(await asked('elsewhere')).toBeNull()
    expect(await asked('head', uuidv7())).toBeNull()
  })

  it('goes with the diver to her next club, out of sight of the last', async () => {
    await asRole('owner', async (owner) => {
      const at = new Date(noon + 20 * minute)
      await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, at])
      await owner.query('INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)', [
        uuidv7(),
        coast.divers.here,
        coast.clubs.there,
        at,
      ])
    })
    expect(await asked('head')).toBeNull()
    expect(await asked('elsewhere')).toMatchObject({ pair: 'tread@poolside', link: film })
  })

  it('is not there without consent to video, nor once its link was erased', async () => {
    const withdrawn = { diver: coast.divers.here, purpose: 'video', given: false, saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'head', noon + 10 * minute), withdrawn)
    expect(await asked('head')).toBeNull()
    await recordConsent(await coachAs(coast, 'head', noon + 20 * minute), { ...withdrawn, given: true })
    expect(await asked('head')).not.toBeNull()
    await asRole('owner', (owner) => owner.query('UPDATE "Moment" SET "link" = NULL WHERE "id" = $1', [moment]))
    expect(await asked('head')).toBeNull()
  })
})
