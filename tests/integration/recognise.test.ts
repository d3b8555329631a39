import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openState } from '../../lib/assessment/open'
import { evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { enterDivers } from '../../lib/assessment/store/divers'
import { readDiver } from '../../lib/assessment/store/reads'
import { findRecognition, type Recognitions, recogniseAll } from '../../lib/assessment/store/recognise'
import { revoke } from '../../lib/assessment/store/revoke'
import { asOfInstant } from '../../lib/assessment/time'
import { closeDatabase } from '../../lib/platform/db'
import { checkAsOwner } from '../support/check-as-owner'
import { asRole } from '../support/database'
import { readReadiness } from '../support/rows'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  officeAs,
  type PersonKey,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
  for (const who of ['head', 'elsewhere'] as const) await readReadiness(await coachAs(coast, who, noon - minute))
})
afterAll(closeDatabase)

const treading = { kind: 'holding', pair: 'tread@poolside', level: 'one' } as const
const jumping = { kind: 'holding', pair: 'jump@1m', level: 'one' } as const
const reason = 'Held it at her last club; shown to me in August.'
const recogniseAs = async (who: PersonKey, ticks: Recognitions['ticks'], why = reason, at = noon) =>
  recogniseAll(await coachAs(coast, who, at), { ticks, reason: why })

const ledger = () =>
  asRole('owner', async (owner) => {
    const { rows } = await owner.query<{ kind: string; payload: string }>(
      `SELECT "kind", "payload" FROM "Ledger" WHERE "programmeId" = $1 AND "seq" > 1 ORDER BY "seq"`,
      [coast.programme],
    )
    return rows
  })

async function stateOf(at: number, pair: 'tread@poolside' | 'jump@1m' | '101C@1m') {
  const desk = await readDiver(await coachAs(coast, 'head', at), coast.divers.here)
  if (!desk) throw new Error('she is not there')
  const evaluation = evaluationOf(desk.curriculum, desk.file.record, asOfInstant(at, 'UTC'))
  return { holding: evaluation.holdings.of(pair).state, open: openState(evaluation, pair).state }
}

describe('a recognition', () => {
  it('is written for a whole squad at once, one ledger event each, without a name or the reason', async () => {
    const [ada = ''] = await enterDivers(await coachAs(coast, 'head', noon), {
      club: coast.clubs.here,
      zone: 'UTC',
      squad: null,
      since: 20_000,
      divers: [{ givenName: 'Ada', familyName: 'Reef', born: null, twistingSide: null, hurdleLeg: null }],
    })
    const level = { kind: 'level', level: 'one' } as const
    const move = { kind: 'boardMove', family: 'forward', to: '3m' } as const
    const outcome = await recogniseAs('head', [
      { diver: coast.divers.here, what: treading },
      { diver: coast.divers.here, what: level },
      { diver: coast.divers.here, what: move },
      { diver: ada, what: treading },
      { diver: ada, what: treading },
    ])
    expect(outcome).toEqual({ ok: true, count: 4 })
    const events = await ledger()
    expect(events.map(({ kind }) => kind)).toEqual(Array(4).fill('recognised'))
    expect(events.map(({ payload }) => JSON.parse(payload).what).sort()).toEqual(
      ['holding:tread@poolside:one', 'holding:tread@poolside:one', 'level:one', 'move:forward:3m'].sort(),
    )
    for (const { payload } of events) expect(payload).not.toMatch(/Ada|Reef|Mira|August/)
    const words = await asRole('owner', (owner) =>
      owner.query('SELECT "diverId" FROM "Words" WHERE "text" = $1 AND "clubId" = $2', [reason, coast.clubs.here]),
    )
    expect(words.rows.map(({ diverId }) => diverId).sort()).toEqual([ada, coast.divers.here].sort())
    expect((await checkAsOwner(coast.programme, noon)).differences).toEqual([])
  })

  it('opens what rests on it for training, advances nothing, and lapses after 120 days unless shown', async () => {
    expect(await stateOf(noon, 'jump@1m')).toEqual({ holding: 'none', open: 'closed' })
    await recogniseAs('head', [{ diver: coast.divers.here, what: treading }])
    expect(await stateOf(noon, 'tread@poolside')).toEqual({ holding: 'recognised', open: 'held' })
    expect(await stateOf(noon, 'jump@1m')).toEqual({ holding: 'none', open: 'open' })
    expect(await stateOf(noon + 120 * dayLength, 'tread@poolside')).toMatchObject({ holding: 'recognised' })
    expect(await stateOf(noon + 121 * dayLength, 'tread@poolside')).toMatchObject({ holding: 'lapsed' })
    expect(await stateOf(noon + 121 * dayLength, 'jump@1m')).toMatchObject({ open: 'closed' })
  })

  it('stays when it was shown by the recheck in time', async () => {
    await recogniseAs('head', [{ diver: coast.divers.here, what: treading }])
    const shown = noon + 10 * dayLength
    for (const nth of [0, 1]) {
      const at = shown + nth * 10 * minute
      const items = ratedAttempt(coast, {
        diver: coast.divers.here,
        skill: 'tread',
        place: 'poolside',
        at,
        ratings: { 'clear-water': 3 },
      })
      await sendAs(coast, 'assistant', at + 2 * minute, items)
    }
    expect(await stateOf(noon + 121 * dayLength, 'tread@poolside')).toMatchObject({ holding: 'current' })
  })

  it('may be taken back with a reason by the head coach, once, and is then not recognised again', async () => {
    await recogniseAs('head', [{ diver: coast.divers.here, what: treading }])
    const row = await asRole('owner', (owner) =>
      owner.query('SELECT "id" FROM "Recognition" WHERE "diverId" = $1', [coast.divers.here]),
    )
    const subject = row.rows[0]?.id
    const back = async (who: PersonKey, why: string) =>
      revoke(await coachAs(coast, who, noon + minute), { kind: 'recognition', subject, reason: why })
    expect(await back('head', ' ')).toMatchObject({ refusal: { code: 'no reason' } })
    expect(await back('assistant', 'no')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await back('elsewhere', 'no')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await back('head', 'It was the other Mira.')).toMatchObject({ ok: true })
    expect(await back('head', 'It was the other Mira.')).toMatchObject({ refusal: { code: 'revoked before' } })
    expect((await ledger()).map(({ kind }) => kind)).toEqual(['recognised', 'revoked'])
    expect(await stateOf(noon + 2 * minute, 'tread@poolside')).toMatchObject({ holding: 'revoked' })
    expect(
      await recogniseAs('head', [{ diver: coast.divers.here, what: treading }], reason, noon + 3 * minute),
    ).toMatchObject({ ok: false, refusals: [{ code: 'signed before' }] })
  })

  it('is read with its reason by whoever sees the diver, and does not exist for others', async () => {
    await recogniseAs('head', [{ diver: coast.divers.here, what: treading }])
    const row = await asRole('owner', (owner) =>
      owner.query('SELECT "id" FROM "Recognition" WHERE "diverId" = $1', [coast.divers.here]),
    )
    const read = async (who: PersonKey) => findRecognition(await officeAs(coast, who, noon), row.rows[0]?.id)
    for (const who of ['head', 'assistant', 'reviewer', 'lead'] as const)
      expect(await read(who)).toEqual({
        diver: coast.divers.here,
        by: coast.people.head,
        at: noon,
        reason,
        revoked: null,
      })
    expect(await read('elsewhere')).toBeNull()
  })

  it('of two head coaches at once is written once; the other is told', async () => {
    const ticks = [{ diver: coast.divers.here, what: treading }]
    const both = await Promise.all([recogniseAs('head', ticks), recogniseAs('secondHead', ticks)])
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true])
    expect((await ledger()).map(({ kind }) => kind)).toEqual(['recognised'])
  })
})

describe('nothing is recognised', () => {
  it('by anybody but the diver’s own head coach, nor without a reason or a tick', async () => {
    const ticks = [{ diver: coast.divers.here, what: treading }]
    for (const who of ['assistant', 'elsewhere'] as const)
      expect(await recogniseAs(who, ticks)).toMatchObject({ ok: false, refusals: [{ code: 'not found' }] })
    expect(await recogniseAs('head', ticks, '  ')).toMatchObject({ refusals: [{ code: 'no reason' }] })
    expect(await recogniseAs('head', [])).toMatchObject({ refusals: [{ code: 'nothing' }] })
    expect(await ledger()).toEqual([])
  })

  it('over a critical criterion that was seen to fall short; then none of the others either', async () => {
    const items = ratedAttempt(coast, {
      diver: coast.divers.here,
      skill: 'tread',
      place: 'poolside',
      at: noon - 30 * minute,
      ratings: { 'clear-water': 1 },
    })
    await sendAs(coast, 'assistant', noon - 20 * minute, items)
    const outcome = await recogniseAs('head', [
      { diver: coast.divers.here, what: treading },
      { diver: coast.divers.here, what: jumping },
    ])
    expect(outcome).toMatchObject({ ok: false, refusals: [{ code: 'fell short', diver: coast.divers.here }] })
    expect(await ledger()).toEqual([])
  })
})
