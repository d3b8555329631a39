import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { decideTarget } from '../../lib/assessment/store/decide'
import { signSkill } from '../../lib/assessment/store/sign'
import { readSnapshot } from '../../lib/assessment/store/snapshot'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { readReadiness } from '../support/rows'
import {
  anIncidentItem,
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const treads = (at: number, rating: 3 | 4 = 3) =>
  ratedAttempt(coast, {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': rating },
  })

const rowsOf = <Row>(sql: string, id: string): Promise<Row[]> =>
  asRole('owner', async (owner) => (await owner.query(sql, [id])).rows as Row[])

const closedThen = async (items: ReturnType<typeof treads>): Promise<boolean | undefined> =>
  (await rowsOf<{ closedThen: boolean }>('SELECT "closedThen" FROM "Attempt" WHERE "id" = $1', items[1]?.id ?? ''))[0]
    ?.closedThen

const stateOf = async (pair: string, at: number) => {
  const snapshot = await readSnapshot(await coachAs(coast, 'assistant', at), 'Ann')
  const diver = snapshot.divers.find(({ id }) => id === coast.divers.here)
  return diver?.pairs.find((entry) => entry.pair === pair)
}

const results = (answers: Awaited<ReturnType<typeof sendAs>>) => answers.map(({ result }) => result)

describe('an incident from the deck', () => {
  it('is kept once, under its own id, and stands in the ledger without its words', async () => {
    const item = anIncidentItem(coast.divers.here, noon, { note: 'Left foot on the tip.' })
    expect(results(await sendAs(coast, 'assistant', noon + minute, [item]))).toEqual(['accepted'])
    expect(results(await sendAs(coast, 'assistant', noon + 2 * minute, [item]))).toEqual(['known'])
    const other = await sendAs(coast, 'assistant', noon + 3 * minute, [{ ...item, what: 'too close' }])
    expect(other).toMatchObject([{ result: 'refused', code: 'same id, other content' }])
    const rows = await rowsOf<{ kind: string; noteId: string }>('SELECT * FROM "Incident" WHERE "id" = $1', item.id)
    expect(rows).toMatchObject([{ kind: 'bad landing' }])
    const [entry] = await rowsOf<{ payload: string }>(
      `SELECT "payload" FROM "Ledger" WHERE "kind" = 'incident recorded' AND "programmeId" = $1`,
      coast.programme,
    )
    expect(entry?.payload).toContain(item.id)
    expect(entry?.payload).not.toContain('Left foot')
  })

  it('is kept once when several phones send it at the same time', async () => {
    const item = anIncidentItem(coast.divers.here, noon)
    const all = await Promise.all([1, 2, 3].map(() => sendAs(coast, 'assistant', noon + minute, [item])))
    expect(
      all
        .flat()
        .map(({ result }) => result)
        .sort(),
    ).toEqual(['accepted', 'known', 'known'])
    expect(await rowsOf('SELECT * FROM "Incident" WHERE "id" = $1', item.id)).toHaveLength(1)
  })

  it('closes the skill and what rests on it at once, and a knock to the head the water', async () => {
    expect(await stateOf('tread@poolside', noon)).toMatchObject({ state: 'open' })
    await sendAs(coast, 'assistant', noon + minute, [anIncidentItem(coast.divers.here, noon)])
    expect(await stateOf('tread@poolside', noon + 2 * minute)).toMatchObject({
      state: 'closed',
      because: expect.stringContaining('until a head coach clears it'),
    })
    const knock = anIncidentItem(coast.divers.here, noon, { what: 'knock to the head' })
    await sendAs(coast, 'head', noon + 3 * minute, [knock])
    expect((await stateOf('101C@1m', noon + 4 * minute))?.because).toContain('stood down from the water')
  })

  it('is taken whatever became of the skill, the attempt or the consent to a record', async () => {
    const { here } = coast.divers
    await asRole('owner', (owner) =>
      owner.query(
        `INSERT INTO "Consent" ("id", "clubId", "diverId", "purpose", "given", "saidById", "recordedBy", "recordedAt")
         VALUES ($1, $2, $3, 'record', false, $1, $4, $5)`,
        [uuidv7(), coast.clubs.here, here, coast.people.head, new Date(noon - dayLength)],
      ),
    )
    const items = [
      anIncidentItem(here, noon, { skill: 'no-such-skill', place: '3m', what: 'knock to the head' }),
      anIncidentItem(here, noon, { skill: '103C', place: '3m' }),
      anIncidentItem(here, noon, { attempt: uuidv7() }),
    ]
    expect(results(await sendAs(coast, 'assistant', noon + minute, items))).toEqual([
      'accepted',
      'accepted',
      'accepted',
    ])
    expect((await stateOf('tread@poolside', noon + 2 * minute))?.state).toBe('closed')
  })

  it("is not taken about another club's diver; the phone keeps it and says whom to tell", async () => {
    const item = anIncidentItem(coast.divers.there, noon)
    const [answer] = await sendAs(coast, 'assistant', noon + minute, [item])
    expect(answer).toMatchObject({ result: 'refused', code: 'unknown diver' })
    expect(answer?.message).toContain('tell the head coach there now')
  })

  it('takes the clock of the phone as it was measured', async () => {
    const behind = -3 * dayLength
    const item = anIncidentItem(coast.divers.here, noon + behind)
    await syncDeck(await coachAs(coast, 'assistant', noon + minute), noon + minute + behind, [item])
    const before = treads(noon - 10 * minute)
    await sendAs(coast, 'head', noon + 5 * minute, before)
    expect(await closedThen(before)).toBe(false)
  })
})

describe('a dive beside an incident', () => {
  it('earns nothing when it came after it, in the same batch too; before it, it was open', async () => {
    const [before, after] = [treads(noon), treads(noon + 10 * minute)]
    const incident = anIncidentItem(coast.divers.here, noon + 5 * minute)
    await sendAs(coast, 'assistant', noon + 12 * minute, [...before, incident, ...after])
    expect([await closedThen(before), await closedThen(after)]).toEqual([false, true])
  })

  it('is judged by when it was dived, not by when it came in', async () => {
    const incident = anIncidentItem(coast.divers.here, noon + 5 * minute)
    await sendAs(coast, 'assistant', noon + 6 * minute, [incident])
    const [before, after] = [treads(noon), treads(noon + 8 * minute)]
    await sendAs(coast, 'head', noon + 10 * minute, [...before, ...after])
    expect([await closedThen(before), await closedThen(after)]).toEqual([false, true])
  })
})

describe('an incident that comes in late', () => {
  const later = noon + 2 * dayLength

  /** Two clean attempts, a sign-off and a level: all dived, signed and approved before the phone came back into reach. */
  async function approved() {
    await sendAs(coast, 'assistant', noon + 2 * minute, treads(noon))
    await sendAs(coast, 'assistant', noon + 12 * minute, treads(noon + 10 * minute))
    const signing = {
      diver: coast.divers.here,
      pair: 'tread@poolside',
      level: 'one',
      waiver: null,
      reason: null,
    } as const
    expect(await signSkill(await coachAs(coast, 'assistant', noon + dayLength), signing)).toMatchObject({ ok: true })
  }

  it('pauses at once what was signed meanwhile, and takes the level from the queue', async () => {
    await approved()
    const ready = async (at: number) =>
      (await readReadiness(await coachAs(coast, 'head', at))).find(({ target }) => target === 'level:one')?.ready
    expect(await ready(later)).toBe(true)
    await sendAs(coast, 'secondHead', later + minute, [anIncidentItem(coast.divers.here, noon + 20 * minute)])
    expect(await stateOf('tread@poolside', later + 2 * minute)).toMatchObject({ state: 'closed' })
    expect(await ready(later + 2 * minute)).toBe(false)
  })

  it('stops an approval that is decided at the same time, or is seen to stand against it after', async () => {
    await approved()
    const target = { diver: coast.divers.here, target: 'level:one', outcome: 'approve' } as const
    const decision = { ...target, reason: null, wantsMoreOf: [], diverWants: null, onlyCoach: 'Only one was there.' }
    const [answers, outcome] = await Promise.all([
      sendAs(coast, 'secondHead', later, [anIncidentItem(coast.divers.here, noon + 20 * minute)]),
      decideTarget(await coachAs(coast, 'head', later), decision),
    ])
    expect(results(answers)).toEqual(['accepted'])
    const decided = await rowsOf('SELECT "id" FROM "Decision" WHERE "diverId" = $1', coast.divers.here)
    expect(decided).toHaveLength(outcome.ok ? 1 : 0)
    if (!outcome.ok) expect(outcome.refusal.message).toContain('paused by a bad landing')
    // Whichever came first, from now on nothing more is approved.
    const again = await decideTarget(await coachAs(coast, 'head', later + minute), decision)
    expect(again).toMatchObject({ ok: false })
  })
})
