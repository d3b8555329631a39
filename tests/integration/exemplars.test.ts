import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { Reach } from '../../lib/assessment/consent'
import type { Shows } from '../../lib/assessment/exemplar'
import {
  nameExemplar,
  readExemplars,
  readNamed,
  readOpenExemplars,
  withdrawExemplar,
} from '../../lib/assessment/store/exemplars'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { setGuideOpening } from '../../lib/curriculum/store/guide-opening'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { asRole } from '../support/database'
import { film, filmedAttempt, moveDiver } from '../support/moment-rows'
import { coachAs, makeCoast, minute, noon, officeAs, type PersonKey, type SmallCoast } from '../support/small-club'

// A moment that a head coach names: who may name it, who sees it, and all that takes it away.
const hands: Shows = { kind: 'criterion', criterion: 'hands-locked', level: 'two' }
const apart: Shows = { kind: 'fault', fault: 'hands-apart' }
const everybody = ['assistant', 'head', 'secondHead', 'elsewhere', 'reviewer', 'lead'] as const
let coast: SmallCoast
let moment: string

beforeEach(async () => {
  coast = await makeCoast()
  moment = await filmedAttempt(coast, noon)
})
afterAll(closeDatabase)

const consent = async (reach: Reach | null, at = noon + 10 * minute, purpose: 'exemplar' | 'video' = 'exemplar') =>
  recordConsent(await coachAs(coast, 'head', at), {
    ...{ diver: coast.divers.here, purpose, given: reach !== null, saidBy: 'Her mother' },
    reach: purpose === 'exemplar' ? reach : null,
  })
const name = async (shows: Shows = hands, who: PersonKey = 'head', at = noon + 20 * minute, of = moment) =>
  nameExemplar(await coachAs(coast, who, at), { moment: of, shows })
const named = async (shows: Shows = hands): Promise<string> => {
  const outcome = await name(shows)
  if (!outcome.ok) throw new Error(outcome.refusal.message)
  return outcome.id
}
const withdraw = async (id: string, who: PersonKey = 'head') =>
  withdrawExemplar(await coachAs(coast, who, noon + 30 * minute), id)

/** Who sees any exemplar: coaches by their clubs, the office by the programme. */
async function seers(): Promise<PersonKey[]> {
  const seen = await Promise.all(
    everybody.map(async (who) => [who, await readExemplars(await officeAs(coast, who, noon + 40 * minute))] as const),
  )
  return seen.flatMap(([who, exemplars]) => (exemplars.length > 0 ? [who] : []))
}
const ownClub = ['assistant', 'head', 'secondHead']

describe('naming an exemplar', () => {
  it('wants a consent of its own and one to video', async () => {
    expect(await name()).toMatchObject({ refusal: { code: 'no consent' } })
    expect(await consent('club')).toMatchObject({ ok: true })
    expect(await name()).toMatchObject({ ok: true })
    expect(await name()).toMatchObject({ refusal: { code: 'named before', field: 'shows' } })
    expect(await name(apart)).toMatchObject({ ok: true })
    await consent(null, noon + 22 * minute, 'video')
    expect(await name(apart)).toMatchObject({ refusal: { code: 'not found' } })
  })

  it('is the head coach’s of her club; another club’s moment is not found', async () => {
    await consent('programme')
    expect(await name(hands, 'assistant')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await name(hands, 'elsewhere')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await name(hands, 'head', noon + 20 * minute, uuidv7())).toMatchObject({ refusal: { code: 'not found' } })
    expect(await name(hands, 'secondHead')).toMatchObject({ ok: true })
  })

  it('takes only what the skill is asked for, at a level that asks it', async () => {
    await consent('club')
    const at = (criterion: string, level: string): Shows => ({ kind: 'criterion', criterion, level })
    expect(await name(at('feet-together', 'one'))).toMatchObject({ refusal: { code: 'no such criterion' } })
    expect(await name(at('hands-locked', 'nine'))).toMatchObject({ refusal: { code: 'no such level' } })
    expect(await name({ kind: 'fault', fault: 'late-arms' })).toMatchObject({ refusal: { code: 'no such criterion' } })
  })

  it('is refused by the database itself without consent, of another’s moment, and in another’s name', async () => {
    const insert = `INSERT INTO "Exemplar" ("id", "clubId", "diverId", "momentId", "attemptId", "skill", "place", "fault", "edition", "by", "at")
      VALUES ($1, $2, $3, $4, $1, '101C', '1m', 'hands-apart', 'x', $5, now())`
    const insertAs = (who: PersonKey, diver = coast.divers.here, by = coast.people[who]) =>
      asAccountRow(coast.people[who], (client) =>
        client.query(insert, [uuidv7(), coast.clubs.here, diver, moment, by]).then(() => 'kept'),
      )
    await expect(insertAs('head')).rejects.toThrow(/row-level security/)
    await consent('programme')
    expect(await insertAs('head')).toBe('kept')
    await expect(insertAs('assistant')).rejects.toThrow(/row-level security/)
    await expect(insertAs('elsewhere')).rejects.toThrow(/row-level security/)
    await expect(insertAs('elsewhere', coast.divers.there)).rejects.toThrow(/row-level security/)
    await expect(insertAs('head', coast.divers.here, coast.people.secondHead)).rejects.toThrow(/row-level security/)
  })
})

describe('an exemplar', () => {
  it('is seen by the coaches of her club alone, unless the consent says the programme; never by another programme', async () => {
    await consent('club')
    await named()
    expect(await seers()).toEqual(ownClub)
    expect(await consent('programme', noon + 25 * minute)).toMatchObject({ ok: true })
    expect(await seers()).toEqual([...everybody])
    expect(await consent('club', noon + 26 * minute)).toMatchObject({ ok: true })
    expect(await seers()).toEqual(ownClub)
    await consent('programme', noon + 27 * minute)
    const other = await makeCoast()
    expect(await readExemplars(await officeAs(other, 'lead', noon + 40 * minute))).toEqual([])
    expect(await readExemplars(await coachAs(other, 'head', noon + 40 * minute))).toEqual([])
  })

  it('tells other clubs nothing of whose it is: neither her rows nor the moment’s page', async () => {
    await consent('programme')
    const id = await named()
    const seen = await readExemplars(await coachAs(coast, 'elsewhere', noon + 40 * minute))
    expect(seen).toEqual([{ id, moment: null, pair: '101C@1m', shows: hands, link: film, start: 0.3, end: 2.6 }])
    for (const table of ['Exemplar', 'Moment', 'Diver', 'DiverWords', 'Attempt', 'Observation', 'Consent']) {
      const where = table === 'Diver' ? '"id" = $1' : '"diverId" = $1'
      expect(`${table} ${await countAs(coast.people.elsewhere, table, where, [coast.divers.here])}`).toBe(`${table} 0`)
    }
    // The programme reads her record, and has no use for the rows that name her as an exemplar.
    for (const who of ['reviewer', 'lead'] as const) expect(await countAs(coast.people[who], 'Exemplar')).toBe(0)
    const own = await readExemplars(await coachAs(coast, 'assistant', noon + 40 * minute))
    expect(own).toMatchObject([{ id, moment }])
  })

  it('is not shown beside the attempt that it is of, which is rated blind', async () => {
    await consent('programme')
    await named()
    const scope = await coachAs(coast, 'secondHead', noon + 40 * minute)
    const { rows } = await asRole('owner', (owner) => owner.query('SELECT "attemptId" FROM "Exemplar"'))
    expect(await readExemplars(scope, String(rows.at(-1)?.attemptId))).toEqual([])
    expect(await readExemplars(scope, uuidv7())).toHaveLength(1)
  })

  it('is seen without an account only while the guides are open and the consent says everybody', async () => {
    await consent('everybody')
    await named()
    const open = () => readOpenExemplars(coast.programme)
    expect(await open()).toEqual([])
    const opening = async (is: boolean, at: number) =>
      setGuideOpening(await officeAs(coast, 'lead', at), { open: is, listed: false })
    await opening(true, noon + 30 * minute)
    expect(await open()).toMatchObject([{ moment: null, link: film }])
    await consent('programme', noon + 31 * minute)
    expect(await open()).toEqual([])
    await consent('everybody', noon + 32 * minute)
    await opening(false, noon + 33 * minute)
    expect(await open()).toEqual([])
    expect(await countAs(null, 'Exemplar')).toBe(0)
  })
})

describe('what takes an exemplar away, at once and everywhere', () => {
  const gone = async () => {
    expect(await seers()).toEqual([])
    const scope = await coachAs(coast, 'head', noon + 40 * minute)
    expect((await readNamed(scope, moment, coast.divers.here)).named).toEqual([])
  }
  beforeEach(async () => {
    await consent('programme')
  })

  it('the head coach, once', async () => {
    const id = await named()
    expect(await withdraw(id, 'assistant')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await withdraw(id, 'elsewhere')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await withdraw(id, 'secondHead')).toMatchObject({ ok: true })
    await gone()
    expect(await withdraw(id)).toMatchObject({ refusal: { code: 'withdrawn before' } })
    expect(await name(hands, 'head', noon + 35 * minute)).toMatchObject({ ok: true })
    expect(await seers()).toEqual([...everybody])
  })

  it('the consent to it, for good: given again, a moment has to be named again', async () => {
    await named()
    expect(await consent(null, noon + 25 * minute)).toMatchObject({ ok: true })
    await gone()
    expect(await countAs(coast.people.head, 'Exemplar')).toBe(0)
    await consent('programme', noon + 26 * minute)
    await gone()
    expect(await name(hands, 'head', noon + 27 * minute)).toMatchObject({ ok: true })
    expect(await seers()).toEqual([...everybody])
  })

  it('the consent to video, for good as well: given again, films show and a moment has to be named again', async () => {
    await named()
    await consent(null, noon + 25 * minute, 'video')
    await gone()
    const again = { diver: coast.divers.here, purpose: 'video', given: true, saidBy: 'Her mother' } as const
    expect(await recordConsent(await coachAs(coast, 'head', noon + 26 * minute), again)).toMatchObject({ ok: true })
    await gone()
    // At the very instant of the consent, it comes after the withdrawal.
    expect(await name(hands, 'head', noon + 25 * minute)).toMatchObject({ ok: true })
    expect(await seers()).toEqual([...everybody])
  })

  it('the erasure of the film’s link', async () => {
    await named()
    await asRole('owner', (owner) => owner.query('UPDATE "Moment" SET "link" = NULL WHERE "id" = $1', [moment]))
    await gone()
  })

  it('the diver’s leaving the programme', async () => {
    await named()
    await asRole('owner', (owner) =>
      owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, new Date(noon)]),
    )
    await gone()
  })
})

it('an exemplar goes with the diver to her next club, out of sight of the last', async () => {
  await consent('club')
  const id = await named()
  await moveDiver(coast, noon + 25 * minute)
  expect(await seers()).toEqual(['elsewhere'])
  expect(await withdraw(id)).toMatchObject({ refusal: { code: 'not found' } })
  expect(await withdraw(id, 'elsewhere')).toMatchObject({ ok: true })
  expect(await seers()).toEqual([])
})

describe('the consent to exemplars', () => {
  it('says how far it reaches, after a consent to video, and changes when it is given again for others', async () => {
    const scope = await coachAs(coast, 'head', noon + 10 * minute)
    const said = { diver: coast.divers.here, purpose: 'exemplar', given: true, saidBy: 'Her mother' } as const
    expect(await recordConsent(scope, said)).toMatchObject({ refusal: { code: 'no reach', field: 'reach' } })
    expect(await recordConsent(scope, { ...said, reach: 'club' })).toMatchObject({ ok: true })
    expect(await recordConsent(scope, { ...said, reach: 'club' })).toMatchObject({ refusal: { code: 'as it is' } })
    expect(await recordConsent(scope, { ...said, reach: 'programme' })).toMatchObject({ ok: true })
    await consent(null, noon + 12 * minute)
    await consent(null, noon + 13 * minute, 'video')
    const late = await coachAs(coast, 'head', noon + 14 * minute)
    expect(await recordConsent(late, { ...said, reach: 'club' })).toMatchObject({ refusal: { code: 'no video' } })
  })
})
