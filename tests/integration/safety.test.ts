import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { recordIncident, releaseIncident } from '../../lib/assessment/store/desk-incident'
import { noteGrowth } from '../../lib/assessment/store/growth'
import { readSafety } from '../../lib/assessment/store/safety'
import { readSnapshot } from '../../lib/assessment/store/snapshot'
import { endStandDown, standDown } from '../../lib/assessment/store/stand-down'
import { closeDatabase } from '../../lib/platform/db'
import { checkReadinessAsOwner } from '../support/check-readiness'
import { asRole } from '../support/database'
import {
  anIncidentItem,
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  type PersonKey,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const today = Math.floor(noon / dayLength)

const payloads = (kind: string): Promise<string[]> =>
  asRole('owner', async (owner) => {
    const { rows } = await owner.query('SELECT "payload" FROM "Ledger" WHERE "programmeId" = $1 AND "kind" = $2', [
      coast.programme,
      kind,
    ])
    return rows.map(({ payload }) => payload)
  })

const snapshotOf = async (at: number) => {
  const { divers } = await readSnapshot(await coachAs(coast, 'assistant', at), 'Ann')
  return divers.find(({ id }) => id === coast.divers.here)
}
const stateOf = async (pair: string, at: number) =>
  (await snapshotOf(at))?.pairs.find((entry) => entry.pair === pair)?.state

const differences = async (at: number) => (await checkReadinessAsOwner(coast, at)).differences

describe('clearing an incident', () => {
  const incident = async (what: 'bad landing' | 'knock to the head' = 'bad landing') => {
    const item = anIncidentItem(coast.divers.here, noon, { what })
    await sendAs(coast, 'assistant', noon + minute, [item])
    return item.id
  }
  const release = async (who: PersonKey, id: string, words: { reason?: string; statement?: string } = {}) =>
    releaseIncident(await coachAs(coast, who, noon + 10 * minute), {
      diver: coast.divers.here,
      incident: id,
      reason: 'Landed on the hip; talked through, line-ups first.',
      statement: '',
      ...words,
    })

  it('takes a head coach of the diver’s club and a reason, and opens what was paused', async () => {
    const id = await incident()
    expect(await release('assistant', id)).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await release('elsewhere', id)).toMatchObject({ refusal: { code: 'not found' } })
    expect(await release('head', id, { reason: '  ' })).toMatchObject({ refusal: { field: 'reason' } })
    expect(await stateOf('tread@poolside', noon + 5 * minute)).toBe('closed')
    expect(await release('head', id)).toMatchObject({ ok: true })
    expect(await stateOf('tread@poolside', noon + 15 * minute)).toBe('open')
    const [payload] = await payloads('incident released')
    expect(JSON.parse(payload ?? '')).toMatchObject({ incident: id, adviceFollowed: false })
    expect(payload).not.toContain('hip')
    expect(await differences(noon + 20 * minute)).toEqual([])
  })

  it('takes a statement that medical advice was followed after a knock to the head, which never reaches the ledger', async () => {
    const id = await incident('knock to the head')
    expect(await release('head', id)).toMatchObject({ refusal: { code: 'no statement', field: 'statement' } })
    const statement = 'Cleared by her doctor, letter of Tuesday.'
    expect(await release('head', id, { statement })).toMatchObject({ ok: true })
    const [payload] = await payloads('incident released')
    expect(JSON.parse(payload ?? '')).toMatchObject({ adviceFollowed: true })
    expect(payload).not.toContain('doctor')
    const seenBy = async (who: PersonKey) =>
      (await readSafety(await coachAs(coast, who, noon), coast.divers.here)).incidents[0]?.release
    expect(await seenBy('secondHead')).toMatchObject({ statement, reason: expect.stringContaining('hip') })
    expect(await seenBy('assistant')).toMatchObject({ statement: null, reason: expect.stringContaining('hip') })
  })

  it('happens once, when two head coaches do it at the same time', async () => {
    const id = await incident()
    const outcomes = await Promise.all([release('head', id), release('secondHead', id)])
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
    expect(outcomes.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'cleared before' } })
    expect(await payloads('incident released')).toHaveLength(1)
  })

  it('of one leaves another open', async () => {
    const [first] = [await incident(), await incident()]
    await release('head', first)
    expect(await stateOf('tread@poolside', noon + 15 * minute)).toBe('closed')
  })
})

describe('an incident recorded at the desk', () => {
  const record = async (who: PersonKey, at: number, pair: 'tread@poolside' | '401B@3m' = 'tread@poolside') =>
    recordIncident(await coachAs(coast, who, noon), {
      diver: coast.divers.here,
      pair,
      what: 'too close',
      note: 'Seen from the office.',
      at: () => at,
    })

  it('pauses at once, for any coach of the club, and none of another', async () => {
    expect(await record('assistant', noon + minute)).toMatchObject({ refusal: { code: 'not yet' } })
    expect(await record('assistant', noon - minute, '401B@3m')).toMatchObject({ refusal: { code: 'unknown' } })
    expect(await record('elsewhere', noon - minute)).toMatchObject({ refusal: { code: 'not found' } })
    expect(await record('assistant', noon - minute)).toMatchObject({ ok: true })
    expect(await stateOf('tread@poolside', noon + minute)).toBe('closed')
    const { incidents } = await readSafety(await coachAs(coast, 'head', noon), coast.divers.here)
    expect(incidents).toMatchObject([{ kind: 'too close', note: 'Seen from the office.', release: null }])
    expect(await differences(noon + 20 * minute)).toEqual([])
  })
})

describe('a stand-down', () => {
  const set = async (who: PersonKey, changes: Partial<Parameters<typeof standDown>[1]> = {}) =>
    standDown(await coachAs(coast, who, noon), {
      diver: coast.divers.here,
      closes: 'water',
      from: today,
      until: null,
      reason: 'Concussion protocol, second week.',
      ...changes,
    })
  const end = async (who: PersonKey, id: string, freeFrom: number) =>
    endStandDown(await coachAs(coast, who, noon), { diver: coast.divers.here, standDown: id, freeFrom })
  const idOf = (outcome: Awaited<ReturnType<typeof set>>): string => (outcome.ok ? outcome.id : '')

  it('is set by a head coach of the diver’s club, and closes what it says', async () => {
    expect(await set('assistant')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await set('elsewhere')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await set('head', { until: today - 1 })).toMatchObject({ refusal: { field: 'until' } })
    expect(await set('head', { closes: 'boards' })).toMatchObject({ ok: true })
    expect(await stateOf('tread@poolside', noon)).toBe('open')
    expect(await stateOf('jump@1m', noon)).toBe('closed')
    expect((await snapshotOf(noon))?.standDown).toBe('Mira is stood down from the boards until a head coach ends it.')
    expect(await differences(noon + 20 * minute)).toEqual([])
  })

  it('tells its reason to head coaches and to nobody else, nor to the ledger', async () => {
    await set('head')
    const seenBy = async (who: PersonKey) =>
      (await readSafety(await coachAs(coast, who, noon), coast.divers.here)).standDowns[0]
    expect((await seenBy('secondHead'))?.reason).toBe('Concussion protocol, second week.')
    expect(await seenBy('assistant')).toMatchObject({ closes: 'water', reason: null })
    const snapshot = JSON.stringify(await readSnapshot(await coachAs(coast, 'head', noon), 'Hana'))
    expect(snapshot).toContain('stood down from the water')
    expect(snapshot).not.toContain('Concussion')
    expect((await payloads('stood down')).join()).not.toContain('Concussion')
  })

  it('ends once, by a head coach, never later than it said', async () => {
    const id = idOf(await set('head', { until: today + 10 }))
    expect(await end('assistant', id, today)).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await end('head', id, today - 1)).toMatchObject({ refusal: { code: 'past' } })
    expect(await end('head', id, today + 20)).toMatchObject({ refusal: { code: 'later' } })
    const outcomes = await Promise.all([end('head', id, today), end('secondHead', id, today)])
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
    expect(outcomes.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'ended before' } })
    expect((await snapshotOf(noon + minute))?.standDown).toBeNull()
    expect(await payloads('stand-down ended')).toHaveLength(1)
    expect(await differences(noon + 20 * minute)).toEqual([])
  })

  it('is not changed in any other way, not by its owner either', async () => {
    const id = idOf(await set('head', { until: today + 10 }))
    await asRole('owner', async (owner) => {
      const set = (what: string) => owner.query(`UPDATE "StandDown" SET ${what} WHERE "id" = $1`, [id])
      await expect(set(`"until" = NULL`)).rejects.toThrow(/ended once/)
      await expect(set(`"closes" = 'new'`)).rejects.toThrow(/ended once/)
      const ended = `"endedBy" = "by", "endedAt" = now()`
      await expect(set(`${ended}, "until" = "until" + 1`)).rejects.toThrow(/never later/)
      await expect(set(`${ended}, "closes" = 'new'`)).rejects.toThrow(/only the end/)
      await expect(owner.query('DELETE FROM "StandDown"')).rejects.toThrow(/kept/)
    })
  })
})

describe('a note on growth', () => {
  const note = async (who: PersonKey, notedOn: number) =>
    noteGrowth(await coachAs(coast, who, noon), { diver: coast.divers.here, notedOn, words: 'Four centimetres.' })

  it('changes no status, and is said for ninety days', async () => {
    const before = (await snapshotOf(noon))?.pairs
    expect(await note('elsewhere', today)).toMatchObject({ refusal: { code: 'not found' } })
    expect(await note('assistant', today + 1)).toMatchObject({ refusal: { code: 'not yet', field: 'notedOn' } })
    expect(await note('assistant', today)).toMatchObject({ ok: true })
    const after = await snapshotOf(noon + minute)
    expect(after?.care).toContain('check lead-ups and distances before new dives')
    expect(after?.pairs).toEqual(before)
    expect((await snapshotOf(noon + 90 * dayLength))?.care).toBeNull()
  })
})
