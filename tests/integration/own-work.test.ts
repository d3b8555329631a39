import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { OnFrames } from '../../lib/assessment/measure/taken'
import { keepMark } from '../../lib/assessment/store/marks'
import { keepMeasure } from '../../lib/assessment/store/measures'
import { findMoment } from '../../lib/assessment/store/moments'
import { readOwnWork } from '../../lib/assessment/store/own-work'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { film, filmedAttempt } from '../support/moment-rows'
import { coachAs, makeCoast, minute, noon, type PersonKey, type SmallCoast } from '../support/small-club'

// Who looks blind sees what she measured herself, and never what the first coach did.
let coast: SmallCoast
let moment: string
let attempt: string
let clock: number

beforeEach(async () => {
  coast = await makeCoast()
  moment = await filmedAttempt(coast, noon)
  clock = noon + 10 * minute
  const rows = await asRole('owner', (owner) =>
    owner.query<{ attempt: string }>(
      `SELECT o."attemptId" AS attempt FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId" WHERE m."id" = $1`,
      [moment],
    ),
  )
  attempt = rows.rows[0]?.attempt ?? ''
})
afterAll(closeDatabase)

const scopeOf = async (who: PersonKey) => {
  clock += 1000
  return coachAs(coast, who, clock)
}
const hip: OnFrames = {
  kind: 'hip',
  frames: [{ atMs: 1400, frameUs: 16_667, width: 720, height: 540 }],
  points: { shoulder: { x: 400, y: 200 }, hip: { x: 360, y: 160 }, ankle: { x: 350, y: 250 } },
  upright: 'picture',
  down: false,
  metres: null,
  pixel: 2,
}
async function work(who: PersonKey) {
  const marked = await keepMark(await scopeOf(who), { moment, key: 'entry', atMs: 2050, frameUs: 16_667 })
  const measured = await keepMeasure(await scopeOf(who), { moment, taken: hip })
  expect([marked.ok, measured.ok]).toEqual([true, true])
}
const own = async (who: PersonKey, of = attempt) => readOwnWork(await scopeOf(who), of)

describe('a coach’s own work on the films of an attempt', () => {
  it('is every moment with nothing in it before she worked on it, whatever others did', async () => {
    await work('assistant')
    const found = await own('head')
    expect(found).toEqual([{ moment, href: `${film}#t=0.300,2.600`, start: 0.3, end: 2.6, marks: [], measures: [] }])
  })

  it('is then what she marked and measured, and nothing of anybody else', async () => {
    await work('assistant')
    await work('head')
    for (const who of ['head', 'assistant'] as const) {
      const [one] = await own(who)
      expect(one?.marks).toMatchObject([{ coach: coast.people[who], key: 'entry' }])
      expect(one?.measures).toMatchObject([{ coach: coast.people[who], results: [{ what: 'hipAngle' }] }])
    }
  })

  it('is none for another club, nor of what is not there', async () => {
    expect(await own('elsewhere')).toEqual([])
    expect(await own('head', uuidv7())).toEqual([])
  })
})

it('a moment names what each coach rated of its dive, and who did', async () => {
  const found = await findMoment(await scopeOf('head'), moment)
  expect(found?.observer).toBe(coast.people.assistant)
  expect([...(found?.rated ?? [])]).toEqual([[coast.people.assistant, { 'hands-locked': 3 }]])
  expect(found?.people.has(coast.people.assistant)).toBe(true)
})
