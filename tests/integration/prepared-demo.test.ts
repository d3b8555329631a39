import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { preparedFolder, type Row, type Rows, readPrepared, writeAgain } from '@/seed/demo/prepared/file'
import { loadRows } from '@/seed/demo/prepared/load'
import { asRole, databaseUrls, resetDatabase } from '../support/database'
import { demoPassword, ownState, seed } from '../support/tell-demo'

const own = { password: demoPassword, clockOffset: -5_000 }

beforeEach(resetDatabase)

const count = (table: string): Promise<number> =>
  asRole('owner', async (owner) => (await owner.query(`SELECT count(*)::int AS n FROM "${table}"`)).rows[0].n)

/** The coast before its first day, with one dive and what was seen of it. */
function oneDive(): { readonly rows: Rows; readonly observation: Row } {
  // Whether it fits the seed as it is now is for demo.test.ts to say.
  const made = JSON.parse(fs.readFileSync(path.join(preparedFolder, 'about.json'), 'utf8'))
  const prepared = readPrepared(preparedFolder, made)
  if (!prepared.ok) throw new Error(prepared.why)
  const all = (table: string) => prepared.rows.get(table) ?? []
  const observation = all('Observation').find((row) => row.supersedesId === null && row.noteId === null)
  const attempt = all('Attempt').find((row) => row.id === observation?.attemptId)
  if (!observation || !attempt) throw new Error('the demo has no dive without a note')
  const before = ['Programme', 'Club', 'Account', 'Membership', 'Diver', 'DiverWords', 'DiverMembership', 'Edition']
  const rows: Rows = new Map([
    ...before.map((table) => [table, all(table)] as const),
    ['Call', all('Call').filter((row) => row.id === attempt.callId)],
    ['Attempt', [attempt]],
    ['Observation', [observation]],
    ['Ledger', all('Ledger').slice(0, 3)],
  ])
  return { rows, observation }
}

describe('loading prepared rows', () => {
  it('lets triggers, checks and the ledger’s door do their work, and leaves them as they are', async () => {
    const { rows, observation } = oneDive()
    await asRole('owner', (owner) => loadRows(owner, rows, own))
    const head = await asRole('owner', (owner) => owner.query('SELECT "observationId" FROM "ObservationHead"'))
    expect(head.rows).toEqual([{ observationId: observation.id }])
    const ledger = await asRole('owner', (owner) =>
      owner.query('SELECT "hash" = encode(sha256(convert_to("payload", \'UTF8\')), \'hex\') AS fits FROM "Ledger"'),
    )
    expect(ledger.rows).toEqual([{ fits: true }, { fits: true }, { fits: true }])
    for (const change of ['UPDATE "Observation" SET "faults" = \'{}\'', 'DELETE FROM "Ledger"', 'TRUNCATE "Ledger"'])
      await expect(asRole('owner', (owner) => owner.query(change))).rejects.toThrow('append-only')
    expect(await asRole('app', async (app) => (await app.query('SELECT FROM "Diver"')).rowCount)).toBe(0)
  })

  it('gives each account a hash of its own, and the clock of this installation', async () => {
    await asRole('owner', (owner) => loadRows(owner, oneDive().rows, own))
    const { rows } = await asRole('owner', (owner) =>
      owner.query('SELECT count(DISTINCT "passwordHash")::int AS hashes, count(*)::int AS accounts FROM "Account"'),
    )
    expect(rows).toEqual([{ hashes: 14, accounts: 14 }])
    const clock = await asRole('owner', (owner) => owner.query('SELECT "isDemo", "clockOffsetMs" FROM "Programme"'))
    expect(clock.rows).toEqual([{ isDemo: true, clockOffsetMs: '-5000' }])
  })

  const wrong: [string, (rows: Rows, observation: Row) => Rows, RegExp][] = [
    [
      'a row of another diver',
      (rows, row) =>
        new Map([
          ...rows,
          ['Observation', [{ ...row, diverId: rows.get('Diver')?.find(({ id }) => id !== row.diverId)?.id }]],
        ]),
      /^Observation: the attempt is not that diver/,
    ],
    ['a row without its parent', (rows) => new Map([...rows, ['Attempt', []]]), /^Observation: the attempt is not/],
    [
      'a gap in the ledger',
      (rows) => new Map([...rows, ['Ledger', (rows.get('Ledger') ?? []).slice(1)]]),
      /^Ledger: entry 2/,
    ],
    [
      'a column that is not there',
      (rows) => new Map([...rows, ['Club', [{ id: 'x', colour: 1 }]]]),
      /^Club: column "colour"/,
    ],
    ['a table that is not there', (rows) => new Map([...rows, ['Mark', [{ id: 1 }]]]), /no table Mark/],
  ]
  it.each(wrong)('with %s is refused, and leaves nothing behind', async (_what, change, message) => {
    const { rows, observation } = oneDive()
    await expect(asRole('owner', (owner) => loadRows(owner, change(rows, observation), own))).rejects.toThrow(message)
    expect(await count('Programme')).toBe(0)
  })
})

describe('a prepared demo that does not fit', () => {
  const broken = (change: (folder: string) => void): string => {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-unfit-'))
    for (const name of ['about.json', 'rows.json.br'])
      fs.copyFileSync(path.join(preparedFolder, name), path.join(folder, name))
    change(folder)
    return folder
  }

  it('is said in one line, and the season is told instead', async () => {
    const folder = broken((place) => fs.truncateSync(path.join(place, 'rows.json.br'), 1_000))
    const { code, said } = await seed(databaseUrls(), ownState(), '--prepared', folder, '--until', '2024-09-03')
    fs.rmSync(folder, { recursive: true })
    expect(code).toBe(0)
    expect(said.split('\n')[0]).toBe(
      `  The prepared demo is not used: ${path.join(folder, 'rows.json.br')} is damaged. The season is told instead, which takes minutes; \`${writeAgain}\` prepares it again.`,
    )
    expect(await count('Attempt')).toBeGreaterThan(20)
    expect(await count('Readiness')).toBeGreaterThan(500)
  }, 300_000)
})
