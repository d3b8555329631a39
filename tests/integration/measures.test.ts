import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { measureTaken } from '../../lib/assessment/measure/take'
import type { OnFrames } from '../../lib/assessment/measure/taken'
import { keepMark } from '../../lib/assessment/store/marks'
import { keepMeasure, type MeasureRequest, takeBackMeasure } from '../../lib/assessment/store/measures'
import { findMoment } from '../../lib/assessment/store/moments'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { filmedAttempt, moveDiver } from '../support/moment-rows'
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

const tilt: OnFrames = {
  kind: 'tilt',
  frames: [{ atMs: 1017, frameUs: 16_667, width: 720, height: 540 }],
  points: {
    ankle: { x: 300.25, y: 400 },
    head: { x: 325, y: 200.5 },
    'plumb top': { x: 60, y: 10 },
    'plumb bottom': { x: 62, y: 500 },
  },
  upright: 'plumb',
  down: false,
  metres: null,
  pixel: 2,
}
const flight = { kind: 'flight', drop: { value: 1, sd: 0.1 } } as const

async function keep(who: PersonKey, taken: MeasureRequest['taken'], at = moment) {
  clock += 1000
  return keepMeasure(await coachAs(coast, who, clock), { moment: at, taken })
}
async function mark(who: PersonKey, key: string, atMs: number) {
  clock += 1000
  return keepMark(await coachAs(coast, who, clock), { moment, key, atMs, frameUs: 16_667 })
}
async function shown(who: PersonKey) {
  const found = await findMoment(await coachAs(coast, who, clock), moment)
  return found?.measures ?? null
}
async function takeBack(who: PersonKey, measure: string) {
  clock += 1000
  return takeBackMeasure(await coachAs(coast, who, clock), { moment, measure })
}
const idOf = (outcome: Awaited<ReturnType<typeof keep>>): string => {
  if (!outcome.ok) throw new Error(outcome.refusal.message)
  return outcome.id
}

describe('a measure', () => {
  it('is kept with what was placed, to the part of a pixel, and with what the server makes of it', async () => {
    idOf(await keep('assistant', tilt))
    const expected = measureTaken(tilt, 1)
    if (!expected.ok) throw new Error('it can be measured')
    for (const who of ['assistant', 'head'] as const) {
      const measures = await shown(who)
      expect(measures).toMatchObject([{ coach: coast.people.assistant, taken: tilt }])
      expect(measures?.[0]?.results).toEqual(expected.results)
    }
    const found = await findMoment(await coachAs(coast, 'head', clock), moment)
    expect(found?.board).toBe(1)
    expect(found?.people.get(coast.people.assistant)).toMatchObject({ initials: 'as' })
  })

  it('of a distance says which side of the tip; one that was kept before that was asked is shown, and with a caution', async () => {
    const distance: OnFrames = {
      ...tilt,
      kind: 'distance',
      metres: 1,
      points: {
        near: { x: 220, y: 400 },
        tip: { x: 300, y: 410 },
        board: { x: 200, y: 410 },
        'length from': { x: 100, y: 400 },
        'length to': { x: 100, y: 300 },
        'plumb top': { x: 60, y: 10 },
        'plumb bottom': { x: 60, y: 500 },
      },
    }
    const { board, ...older } = distance.points
    expect(await keep('assistant', { ...distance, points: older })).toMatchObject({
      refusal: { message: 'Still to place: board, further in.' },
    })
    const id = idOf(await keep('assistant', distance))
    expect(await shown('head')).toMatchObject([
      {
        cautions: ['behind the tip'],
        results: [{ value: expect.closeTo(-0.8, 9), check: true }, { value: expect.closeTo(0.1, 9) }],
      },
    ])
    const kept = { what: 'distanceFromTip', value: 0.8, sd: 0.03, low: 0.74, high: 0.86, plausible: null, check: false }
    await asRole('owner', (owner) =>
      owner.query(
        `INSERT INTO "MomentMeasure" ("id", "momentId", "coachId", "inputs", "results", "measuredAt") SELECT $2, "momentId", "coachId", $3, $4, "measuredAt" FROM "MomentMeasure" WHERE "id" = $1`,
        [id, uuidv7(), JSON.stringify({ ...distance, points: older }), JSON.stringify([kept])],
      ),
    )
    expect((await shown('head'))?.[1]).toMatchObject({ cautions: ['side unknown'], results: [kept] })
  })

  it('is shown with what comes of it by the rules of today, not as it was computed when it was kept', async () => {
    const id = idOf(await keep('assistant', { ...tilt, points: { ...tilt.points, 'plumb bottom': { x: 62, y: 500 } } }))
    const [now] = (await shown('head')) ?? []
    await asRole('owner', (owner) =>
      owner.query(
        `INSERT INTO "MomentMeasure" ("id", "momentId", "coachId", "inputs", "results", "measuredAt") SELECT $2, "momentId", "coachId", "inputs", '[]', "measuredAt" FROM "MomentMeasure" WHERE "id" = $1`,
        [id, uuidv7()],
      ),
    )
    expect((await shown('head'))?.[1]?.results).toEqual(now?.results)
  })

  it('is taken back by whoever took it, once; the other coach’s stands', async () => {
    const [hers, his] = [idOf(await keep('assistant', tilt)), idOf(await keep('head', { ...tilt, upright: 'picture' }))]
    expect(await takeBack('head', hers)).toMatchObject({ ok: false, refusal: { code: 'not yours' } })
    expect(await takeBack('assistant', hers)).toMatchObject({ ok: true })
    expect(await takeBack('assistant', hers)).toMatchObject({ ok: false, refusal: { code: 'not yours' } })
    expect(await takeBack('assistant', uuidv7())).toMatchObject({ ok: false })
    expect((await shown('assistant'))?.map(({ id }) => id)).toEqual([his])
  })

  it('of a flight lies between the coach’s own marks, as they stand when it is kept', async () => {
    await mark('head', 'flight', 1000)
    await mark('head', 'entry', 2100)
    expect(await keep('assistant', flight)).toMatchObject({ ok: false, refusal: { code: 'not marked' } })
    await mark('assistant', 'flight', 1017)
    await mark('assistant', 'entry', 2050)
    idOf(await keep('assistant', flight))
    await mark('assistant', 'entry', 2083)
    const measures = await shown('assistant')
    expect(measures).toMatchObject([{ taken: { leaves: { atMs: 1017 }, meets: { atMs: 2050 }, top: null } }])
    expect(measures?.[0]?.results.map(({ what }) => what)).toEqual(['flightTime', 'takeOffSpeed', 'rise', 'entrySpeed'])
    expect(measures?.[0]?.results[0]?.value).toBeCloseTo(1.033, 9)
    await mark('assistant', 'entry', 900)
    expect(await keep('assistant', flight)).toMatchObject({ ok: false, refusal: { code: 'order' } })
  })

  it('is refused where nothing can be measured, in words, and nothing is kept', async () => {
    const cases: [MeasureRequest['taken'], RegExp][] = [
      [{ ...tilt, kind: 'arms' }, /Still to place: shoulder and hand/],
      [{ ...tilt, points: { ...tilt.points, head: { x: 301, y: 402 } } }, /pixels apart/],
      [{ ...tilt, points: { ...tilt.points, head: { x: 301, y: 902 } } }, /outside the picture/],
      [{ ...flight, drop: { value: -3, sd: 0.1 } }, /mark “flight” and “entry” first/],
    ]
    for (const [taken, words] of cases) {
      const outcome = await keep('assistant', taken)
      expect(outcome.ok ? '' : outcome.refusal.message).toMatch(words)
    }
    expect(await shown('assistant')).toEqual([])
  })

  it('is out of reach of another club, of a club that the diver has left, and without consent to video', async () => {
    const missing = { ok: false, refusal: { code: 'not found' } }
    idOf(await keep('assistant', tilt))
    expect(await keep('elsewhere', tilt)).toMatchObject(missing)
    expect(await keep('assistant', tilt, uuidv7())).toMatchObject(missing)
    const withdrawn = { diver: coast.divers.here, purpose: 'video', given: false, saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'head', clock), withdrawn)
    expect(await keep('assistant', tilt)).toMatchObject(missing)
    await recordConsent(await coachAs(coast, 'head', clock + 1), { ...withdrawn, given: true })
    await moveDiver(coast, clock)
    expect(await keep('assistant', tilt)).toMatchObject(missing)
    expect(await shown('assistant')).toBeNull()
    expect(await shown('elsewhere')).toHaveLength(1)
  })
})
