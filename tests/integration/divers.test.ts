import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { findSquadClub, keepSquad, makeSquad, readSquads } from '../../lib/access/store/squads'
import {
  agreeToTransfer,
  endTransfer,
  leaveClub,
  listFormerDivers,
  listTransfers,
  proposeTransfer,
  takeBack,
} from '../../lib/access/store/transfers'
import { enterDivers, findParticulars, mendParticulars } from '../../lib/assessment/store/divers'
import { readDiver } from '../../lib/assessment/store/reads'
import { readVenue, recordVenue } from '../../lib/assessment/store/venue'
import { parseDay } from '../../lib/assessment/time'
import { closeDatabase } from '../../lib/platform/db'
import { checkAsOwner } from '../support/check-as-owner'
import { asRole } from '../support/database'
import { readReadiness } from '../support/rows'
import {
  coachAs,
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

const born = parseDay('2014-03-05')
const diver = (givenName: string) => ({
  givenName,
  familyName: 'Reef',
  born,
  twistingSide: 'left' as const,
  hurdleLeg: null,
})
const enter = async (who: PersonKey, club: string, names: readonly string[], squad: string | null = null) =>
  enterDivers(await coachAs(coast, who, noon), {
    club,
    zone: 'UTC',
    squad,
    since: parseDay('2026-01-10'),
    divers: names.map(diver),
  })
const check = () => checkAsOwner(coast.programme, noon)
const sees = async (who: PersonKey, id: string, at = noon) =>
  (await readDiver(await coachAs(coast, who, at), id)) !== null

describe('divers and squads', () => {
  it('are entered by the head coach, all or none, with their readiness worked out', async () => {
    const head = await coachAs(coast, 'head', noon)
    const squad = await makeSquad(head, coast.clubs.here, 'Tuesday')
    const ids = await enter('head', coast.clubs.here, ['Ada', 'Bo', 'Cai'], squad)
    expect((await readSquads(head, coast.clubs.here)).squads).toEqual([
      { id: squad, club: coast.clubs.here, name: 'Tuesday', divers: ids },
    ])
    expect(await findParticulars(head, ids[0] ?? '')).toEqual({ id: ids[0], ...diver('Ada') })
    const targets = (await readReadiness(head)).filter((row) => ids.includes(row.diverId))
    expect(targets.length).toBeGreaterThan(ids.length)
    for (const who of ['assistant', 'elsewhere'] as const)
      await expect(enter(who, coast.clubs.here, ['Dov'])).rejects.toThrow()
    await expect(enter('head', coast.clubs.there, ['Dov'])).rejects.toThrow()
    await expect(
      enterDivers(head, {
        club: coast.clubs.here,
        zone: 'UTC',
        squad: coast.clubs.there,
        since: born,
        divers: [diver('Eli')],
      }),
    ).rejects.toThrow()
    expect((await readSquads(head, coast.clubs.here)).divers.map((one) => one.givenName)).toEqual([
      'Ada',
      'Bo',
      'Cai',
      'Mira',
    ])
    expect((await check()).differences).toEqual([])
  })

  it('are kept by their own head coach and exist for no other club', async () => {
    const head = await coachAs(coast, 'head', noon)
    const [ada = ''] = await enter('head', coast.clubs.here, ['Ada'])
    const mended = { id: ada, ...diver('Adele'), born: parseDay('2013-01-01') }
    for (const who of ['elsewhere', 'assistant', 'reviewer'] as const)
      expect(await mendParticulars(await officeAs(coast, who, noon), mended)).toBe(false)
    expect(await mendParticulars(head, mended)).toBe(true)
    expect(await findParticulars(head, ada)).toEqual(mended)
    expect(await findParticulars(await coachAs(coast, 'elsewhere', noon), ada)).toBeNull()
    expect((await check()).differences).toEqual([])
  })

  it('change squads by the head coach’s hand alone, and only into squads of their club', async () => {
    const head = await coachAs(coast, 'head', noon)
    const squad = await makeSquad(head, coast.clubs.here, 'Tuesday')
    const [ada = '', bo = ''] = await enter('head', coast.clubs.here, ['Ada', 'Bo'], squad)
    await keepSquad(head, squad, { name: 'Wednesday', divers: [bo, coast.divers.here] })
    const after = (await readSquads(head, coast.clubs.here)).squads[0]
    expect(after?.name).toBe('Wednesday')
    expect([...(after?.divers ?? [])].sort()).toEqual([bo, coast.divers.here].sort())
    await expect(keepSquad(head, squad, { name: 'Wednesday', divers: [coast.divers.there] })).rejects.toThrow()
    for (const who of ['assistant', 'elsewhere'] as const) {
      await expect(keepSquad(await coachAs(coast, who, noon), squad, { name: 'Mine', divers: [ada] })).rejects.toThrow()
      await expect(makeSquad(await coachAs(coast, who, noon), coast.clubs.here, 'Mine')).rejects.toThrow()
    }
    expect(await findSquadClub(await coachAs(coast, 'elsewhere', noon), squad)).toBeNull()
  })

  it('are ready for what the club’s boards allow, as the head coach records them', async () => {
    const head = await coachAs(coast, 'head', noon)
    await recordVenue(head, coast.clubs.here, 'board-3m', false)
    expect(await readVenue(head, coast.clubs.here)).toEqual(new Map([['board-3m', false]]))
    expect((await check()).differences).toEqual([])
    for (const who of ['assistant', 'elsewhere'] as const)
      await expect(recordVenue(await coachAs(coast, who, noon), coast.clubs.here, 'board-3m', true)).rejects.toThrow()
  })
})

describe('a transfer', () => {
  const sides = () => ({ fromClub: coast.clubs.here, toClub: coast.clubs.there })
  const offered = () => ({
    ...sides(),
    proposedFor: coast.clubs.here,
    diver: coast.divers.here,
    name: 'Mira Oake',
    bornOn: null,
  })

  async function trained() {
    const items = ratedAttempt(coast, {
      diver: coast.divers.here,
      skill: 'tread',
      place: 'poolside',
      at: noon - 30 * minute,
      ratings: { 'clear-water': 3 },
    })
    const answers = await sendAs(coast, 'head', noon - 20 * minute, items)
    expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  }

  it('wants both head coaches; the record goes along, each row keeps its club, squads are left', async () => {
    await trained()
    const head = await coachAs(coast, 'head', noon)
    const squad = await makeSquad(head, coast.clubs.here, 'Tuesday')
    await keepSquad(head, squad, { name: 'Tuesday', divers: [coast.divers.here] })
    expect(await proposeTransfer(head, offered())).toBe(true)
    expect(await proposeTransfer(head, offered())).toBe(false)
    const elsewhere = await coachAs(coast, 'elsewhere', noon)
    expect(await sees('elsewhere', coast.divers.here)).toBe(false)
    const [open] = await listTransfers(elsewhere)
    expect(open).toMatchObject({ name: 'Mira Oake', agreedAt: null })
    const id = open?.id ?? ''
    for (const who of ['head', 'assistant'] as const)
      expect(await agreeToTransfer(await coachAs(coast, who, noon), id, null)).toBe('closed')
    expect(await sees('head', coast.divers.here)).toBe(true)
    expect(await agreeToTransfer(elsewhere, id, null)).toBe('agreed')
    expect(await agreeToTransfer(elsewhere, id, null)).toBe('closed')
    const later = noon + minute
    expect(await sees('head', coast.divers.here, later)).toBe(false)
    const moved = await readDiver(await coachAs(coast, 'elsewhere', later), coast.divers.here)
    expect(moved?.file.squads).toEqual([])
    expect(moved?.file.record.attempts.map(({ club }) => club)).toEqual([coast.clubs.here])
    const rows = await readReadiness(await coachAs(coast, 'elsewhere', later))
    expect(rows.filter((row) => row.diverId === coast.divers.here).map((row) => row.clubId)).not.toContain(
      coast.clubs.here,
    )
    expect((await check()).differences).toEqual([])
    const settled = await listTransfers(await coachAs(coast, 'head', later))
    expect(settled).toMatchObject([{ id, name: null, agreedAt: noon }])
  })

  it('asked for by the new club names nobody: the old club says who is meant, of its own divers only', async () => {
    const elsewhere = await coachAs(coast, 'elsewhere', noon)
    const asked = { ...sides(), proposedFor: coast.clubs.there, diver: null, name: 'Mira Oake', bornOn: null }
    await expect(proposeTransfer(elsewhere, { ...asked, diver: coast.divers.here })).rejects.toThrow()
    expect(await proposeTransfer(elsewhere, asked)).toBe(true)
    const head = await coachAs(coast, 'head', noon)
    const [open] = await listTransfers(head)
    expect(await agreeToTransfer(elsewhere, open?.id ?? '', coast.divers.here)).toBe('closed')
    expect(await agreeToTransfer(head, open?.id ?? '', coast.divers.there)).toBe('not there')
    expect(await agreeToTransfer(head, open?.id ?? '', coast.divers.here)).toBe('agreed')
    expect(await sees('elsewhere', coast.divers.here, noon + minute)).toBe(true)
    const due = await check()
    expect(due.differences).toEqual([])
    expect(due.due).toBeGreaterThan(0)
  })

  it('is ended by either, and seen by nobody but the two head coaches', async () => {
    const head = await coachAs(coast, 'head', noon)
    await proposeTransfer(head, offered())
    const [open] = await listTransfers(head)
    for (const who of ['assistant', 'reviewer', 'lead'] as const) {
      const scope = await officeAs(coast, who, noon)
      expect(await listTransfers(scope)).toEqual([])
      expect(await endTransfer(scope, open?.id ?? '')).toBe(false)
    }
    expect(await endTransfer(await coachAs(coast, 'elsewhere', noon), open?.id ?? '')).toBe(true)
    expect(await agreeToTransfer(await coachAs(coast, 'elsewhere', noon), open?.id ?? '', null)).toBe('closed')
    expect(await listTransfers(head)).toMatchObject([{ name: null, endedAt: noon }])
    expect(await proposeTransfer(head, offered())).toBe(true)
  })

  it('that is agreed to and ended, or left, at the same time comes to one end', async () => {
    for (const other of ['end', 'leave', 'agree'] as const) {
      const fresh = await makeCoast()
      coast = fresh
      for (const who of ['head', 'elsewhere'] as const) await readReadiness(await coachAs(coast, who, noon - minute))
      const [head, elsewhere] = [await coachAs(coast, 'head', noon), await coachAs(coast, 'elsewhere', noon)]
      await proposeTransfer(head, offered())
      const [open] = await listTransfers(head)
      const id = open?.id ?? ''
      const [agreed, done] = await Promise.all([
        agreeToTransfer(elsewhere, id, null),
        other === 'end'
          ? endTransfer(head, id)
          : other === 'leave'
            ? leaveClub(head, coast.divers.here, coast.clubs.here, noon)
            : agreeToTransfer(elsewhere, id, null).then((result) => result === 'agreed'),
      ])
      // A diver who has just left still goes where both clubs have agreed that she goes.
      if (other !== 'leave') expect([agreed === 'agreed', done].sort()).toEqual([false, true])
      const { rows } = await asRole('owner', (owner) =>
        owner.query('SELECT "clubId" FROM "DiverMembership" WHERE "diverId" = $1 AND "to" IS NULL', [
          coast.divers.here,
        ]),
      )
      expect(rows).toEqual([{ clubId: agreed === 'agreed' ? coast.clubs.there : coast.clubs.here }])
      expect((await check()).differences).toEqual([])
    }
  })

  it('is proposed by a head coach of one of the two clubs, for her own divers', async () => {
    await expect(proposeTransfer(await coachAs(coast, 'assistant', noon), offered())).rejects.toThrow()
    await expect(proposeTransfer(await coachAs(coast, 'elsewhere', noon), offered())).rejects.toThrow()
    await expect(
      proposeTransfer(await coachAs(coast, 'head', noon), { ...offered(), diver: coast.divers.there }),
    ).rejects.toThrow()
  })

  it('is left aside by a diver who leaves: nobody sees her record until she is taken back or asked for', async () => {
    await trained()
    const head = await coachAs(coast, 'head', noon)
    expect(await leaveClub(await coachAs(coast, 'elsewhere', noon), coast.divers.here, coast.clubs.here, noon)).toBe(
      false,
    )
    expect(await leaveClub(head, coast.divers.here, coast.clubs.here, noon)).toBe(true)
    const later = noon + minute
    expect(await sees('head', coast.divers.here, later)).toBe(false)
    expect((await check()).differences).toEqual([])
    const gone = await listFormerDivers(await coachAs(coast, 'head', later))
    expect(gone).toEqual([{ id: coast.divers.here, name: 'Mira Oake', club: coast.clubs.here, left: noon }])
    expect(await listFormerDivers(await coachAs(coast, 'elsewhere', later))).toEqual([])
    expect(await takeBack(await coachAs(coast, 'elsewhere', later), coast.divers.here, coast.clubs.there)).toBe(false)
    expect(await takeBack(await coachAs(coast, 'head', later), coast.divers.here, coast.clubs.here)).toBe(true)
    expect(await sees('head', coast.divers.here, later + minute)).toBe(true)
  })
})

it('no coach gives herself a membership of a diver, nor moves one by hand', async () => {
  await asRole('app', async (client) => {
    await client.query('BEGIN')
    await client.query("SELECT set_config('app.account_id', $1, true)", [coast.people.elsewhere])
    await client.query('SAVEPOINT here')
    const byHand = [
      `INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES (gen_random_uuid(), '${coast.divers.here}', '${coast.clubs.there}', now())`,
      `SELECT put_into_club('${coast.divers.here}', '${coast.clubs.there}', now())`,
      `INSERT INTO "Membership" ("id", "accountId", "programmeId", "clubId", "role", "from") VALUES (gen_random_uuid(), '${coast.people.elsewhere}', '${coast.programme}', '${coast.clubs.here}', 'head', now())`,
      `UPDATE "Transfer" SET "agreedAt" = now()`,
    ]
    for (const sql of byHand) {
      await expect(client.query(sql)).rejects.toThrow(/permission denied/)
      await client.query('ROLLBACK TO here')
    }
    await expect(
      client.query(
        `SELECT enter_diver('${coast.divers.here}', '${coast.clubs.there}', 'X', 'Y', NULL, NULL, NULL, now(), now())`,
      ),
    ).rejects.toThrow(/duplicate key/)
  })
})
