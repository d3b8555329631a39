import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { keepMark, type MarkRequest } from '../../lib/assessment/store/marks'
import { findMoment } from '../../lib/assessment/store/moments'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow } from '../support/account-rows'
import { filmedAttempt } from '../support/moment-rows'
import { coachAs, makeCoast, minute, noon, type PersonKey, type SmallCoast } from '../support/small-club'

let coast: SmallCoast
let moment: string
let clock: number

beforeEach(async () => {
  coast = await makeCoast()
  moment = await filmedAttempt(coast, noon)
  clock = noon + 10 * minute
})
afterAll(closeDatabase)

async function mark(who: PersonKey, key: string, atMs: number | null, changes: Partial<MarkRequest> = {}) {
  clock += 1000
  return keepMark(await coachAs(coast, who, clock), { moment, key, atMs, frameUs: 16_667, ...changes })
}

async function shown(who: PersonKey) {
  const found = await findMoment(await coachAs(coast, who, clock), moment)
  const whose = Object.entries(coast.people)
  return found?.marks.map(({ coach, key, atMs }) => [whose.find(([, id]) => id === coach)?.[0], key, atMs])
}

describe('a mark', () => {
  it('is kept with the frame’s time; the last one stands, each coach’s own, until it is taken back', async () => {
    expect(await mark('assistant', 'flight', 1017)).toMatchObject({ ok: true })
    expect(await mark('head', 'flight', 1050)).toMatchObject({ ok: true })
    await mark('assistant', 'entry', 1900)
    await mark('assistant', 'flight', 1000)
    for (const who of ['assistant', 'head'] as const)
      expect(await shown(who)).toEqual([
        ['assistant', 'flight', 1000],
        ['head', 'flight', 1050],
        ['assistant', 'entry', 1900],
      ])
    await mark('assistant', 'flight', null, { frameUs: null })
    expect(await shown('head')).toEqual([
      ['head', 'flight', 1050],
      ['assistant', 'entry', 1900],
    ])
    const found = await findMoment(await coachAs(coast, 'head', clock), moment)
    expect(found?.marks[0]?.frameUs).toBe(16_667)
    expect(found?.people.get(coast.people.assistant)).toMatchObject({ initials: 'as' })
  })

  it('is kept where it is merely odd: out of order, out of the range, frames of unknown length', async () => {
    for (const [key, atMs, frameUs] of [
      ['entry', 500, 16_667],
      ['flight', 2400, 16_667],
      ['approach', 0, null],
      ['under water', 9_000, 40_000],
    ] as const)
      expect(await mark('assistant', key, atMs, { frameUs })).toMatchObject({ ok: true })
  })

  it('is refused where it cannot be', async () => {
    for (const [key, atMs, changes, code] of [
      ['stance', 1000, {}, 'no such phase'],
      ['flight', -1, {}, 'no such time'],
      ['flight', 10.5, {}, 'no such time'],
      ['flight', Number.NaN, {}, 'no such time'],
      ['flight', 86_400_001, {}, 'no such time'],
      ['flight', 1000, { frameUs: 0 }, 'no such frame'],
      ['flight', 1000, { frameUs: 2_000_000 }, 'no such frame'],
      ['flight', 1000, { moment: uuidv7() }, 'not found'],
    ] as const)
      expect(await mark('assistant', key, atMs, changes)).toMatchObject({ ok: false, refusal: { code } })
    expect(await shown('assistant')).toEqual([])
  })

  it('is not made by another club, nor by somebody who does not coach', async () => {
    expect(await mark('elsewhere', 'flight', 1000)).toMatchObject({ ok: false, refusal: { code: 'not found' } })
    const scope = { ...(await coachAs(coast, 'assistant', clock)), account: coast.people.reviewer }
    await expect(keepMark(scope, { moment, key: 'flight', atMs: 1000, frameUs: null })).rejects.toThrow()
  })
})

describe('the database itself', () => {
  it('takes a mark in the coach’s own name only', async () => {
    const insert = (who: PersonKey, as: PersonKey) =>
      asAccountRow(coast.people[who], (client) =>
        client.query(
          `INSERT INTO "MomentMark" ("id", "momentId", "coachId", "phase", "atMs", "markedAt") VALUES ($1, $2, $3, 'entry', 5, now())`,
          [uuidv7(), moment, coast.people[as]],
        ),
      )
    await insert('head', 'head')
    for (const [who, as] of [
      ['head', 'assistant'],
      ['elsewhere', 'elsewhere'],
      ['reviewer', 'reviewer'],
      ['lead', 'lead'],
    ] as const)
      await expect(insert(who, as)).rejects.toThrow(/row-level security/)
  })
})
