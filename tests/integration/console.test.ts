import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { closeDatabase } from '../../lib/platform/db'
import { run as divers } from '../../scripts/commands/divers'
import { run as readiness } from '../../scripts/commands/readiness'
import { run as rebuild } from '../../scripts/commands/rebuild'
import { asRole } from '../support/database'
import { readReadiness } from '../support/rows'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'
import { told } from '../support/told'

let coast: SmallCoast
beforeAll(async () => {
  vi.useFakeTimers({ now: noon + dayLength, toFake: ['Date'] })
  coast = await makeCoast()
  const tread = { diver: coast.divers.here, skill: 'tread', place: 'poolside', ratings: { 'clear-water': 4 } } as const
  for (const at of [noon, noon + 10 * minute])
    await sendAs(coast, 'assistant', at + 2 * minute, ratedAttempt(coast, { ...tread, at }))
  for (const who of ['head', 'elsewhere'] as const) await readReadiness(await coachAs(coast, who, Date.now()))
  await closeDatabase()
})
afterAll(() => vi.useRealTimers())

describe('divers', () => {
  it('lists every diver of the programme, of all clubs', async () => {
    const { code, out, err } = await told(divers, '--json')
    expect([code, err]).toEqual([0, ''])
    const listed = [coast.divers.here, coast.divers.there].map((id) => ({
      id,
      name: 'Mira Oake',
      club: 'A club',
      squads: [],
    }))
    expect(JSON.parse(out)).toHaveLength(2)
    expect(JSON.parse(out)).toEqual(expect.arrayContaining(listed))
    const table = await told(divers)
    expect(table.out.split('\n')[0]).toMatch(/^id +name +club +squads$/)
    expect(table.out).toContain(`${coast.divers.here}  Mira Oake  A club\n`)
    expect(await told(divers, '--squads')).toMatchObject({ code: 2, out: '' })
  })
})

describe('readiness', () => {
  const asked = (...args: string[]) => told(readiness, '--diver', coast.divers.here, ...args)

  it('says how a diver stands to each target', async () => {
    const { code, out, err } = await asked('--json')
    expect([code, err]).toEqual([0, ''])
    const answer = JSON.parse(out)
    expect(answer).toMatchObject({
      diver: coast.divers.here,
      name: 'Mira Oake',
      date: '2026-03-03',
      edition: coast.edition,
    })
    const targets = answer.targets.map(({ target }: { target: string }) => target)
    expect(targets).toEqual(['level:one', 'level:two', 'level:three', 'move:forward:3m'])
    expect(answer.targets[0]).toMatchObject({
      status: 'unproven',
      held: 'no',
      ready: false,
      remaining: { kind: 'count', attempts: 0, decisions: 2, exact: true },
      headline: 'Mira is two decisions away from One.',
      lines: ['Treads deep water at the poolside has reached the standard of One and waits to be signed.'],
    })
  })

  it('says it in words, as of the end of a date', async () => {
    const before = await asked('--date', '2026-03-01')
    expect(before).toMatchObject({ code: 0, err: '' })
    expect(before.out).toMatch(/^Mira Oake, 2026-03-01\n\nMira is two clean attempts and two decisions away from One, /)
    const after = await asked('--date', '2026-03-02')
    expect(after.out).toMatch(/^Mira Oake, 2026-03-02\n\nMira is two decisions away from One\.\n/)
  })

  it('does not know a diver of no programme', async () => {
    const unknown = '018f0000-0000-7000-8000-000000000000'
    expect(await told(readiness, '--diver', unknown)).toEqual({
      code: 1,
      out: '',
      err: `No diver of the programme has the id ${unknown}.\n`,
    })
  })

  it.each([
    [[], 'name the diver: --diver ID, as the command divers lists it'],
    [['--diver', 'Mira'], '"Mira" is not a diver\'s id'],
    [
      ['--diver', '018f0000-0000-7000-8000-000000000000', '--date', '2026-02-30'],
      '"2026-02-30" is not a date that exists; write it as YYYY-MM-DD',
    ],
  ])('is not used as %j', async (args, message) => {
    const { code, out, err } = await told(readiness, ...args)
    expect([code, out]).toEqual([2, ''])
    expect(err).toBe(`${message}\nUsage: plumbline readiness --diver ID [--date YYYY-MM-DD] [--json]\n`)
  })
})

describe('rebuild', () => {
  it('does nothing without --check', async () => {
    const { code, out, err } = await told(rebuild)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain('say --check')
  })

  it('finds nothing in rows as they were kept', async () => {
    expect(await told(rebuild, '--check')).toEqual({
      code: 0,
      out: '2 divers, 8 rows compared, 0 due to be worked out again today, 0 differ\n',
      err: '',
    })
  })

  it('names a row that was tampered with, and how', async () => {
    await asRole('superuser', (superuser) =>
      superuser.query(`UPDATE "Readiness" SET "ready" = true WHERE "diverId" = $1 AND "target" = 'level:two'`, [
        coast.divers.here,
      ]),
    )
    const { code, out } = await told(rebuild, '--check')
    expect(code).toBe(1)
    expect(out).toContain(`${coast.divers.here} level:two: ready is true, should be false\n`)
    expect(out).toMatch(/, 1 differ\n$/)
    const json = await told(rebuild, '--check', '--json')
    expect(json.code).toBe(1)
    expect(JSON.parse(json.out).differences).toEqual([
      { diver: coast.divers.here, target: 'level:two', what: 'ready is true, should be false' },
    ])
  })
})
