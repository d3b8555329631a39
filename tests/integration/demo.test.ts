import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { programmeTime } from '@/lib/access/scope'
import { findActor } from '@/lib/access/store/actors'
import { listDemoSignIns, openSession } from '@/lib/access/store/sessions'
import { tallyChecks } from '@/lib/assessment/moment-check'
import { openState } from '@/lib/assessment/open'
import { questionsUnder, standingQuestions } from '@/lib/assessment/question'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import type { Finding } from '@/lib/assessment/readiness/finding'
import { standingRow } from '@/lib/assessment/readiness/standing-row'
import { datesOf } from '@/lib/assessment/readiness/target-standing'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import { checkReadiness } from '@/lib/assessment/store/check-readiness'
import { readDiver } from '@/lib/assessment/store/reads'
import { type DiverFile, listDiverFiles } from '@/lib/assessment/store/records'
import { readToDo } from '@/lib/assessment/store/safety'
import { readStandings } from '@/lib/assessment/store/standings'
import { asOfInstant, dayIn, parseDay } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { getEditionInForce } from '@/lib/curriculum/store/editions'
import { asAccount, closeDatabase } from '@/lib/platform/db'
import { everybody, movesIn } from '@/lib/reports/filter'
import { type DiverOnPathway, figures, placeDiver } from '@/lib/reports/pathway'
import { type CountRow, groupings, levelTable, moveTable } from '@/lib/reports/tables'
import { coast } from '@/seed/demo/bootstrap'
import { clubs } from '@/seed/demo/coast'
import { coachScope, officeScope } from '@/seed/demo/hands'
import { type Rows, readPrepared, writeAgain } from '@/seed/demo/prepared/file'
import { fixedNow } from '@/seed/demo/season'
import { demoSignIns } from '@/seed/demo/sign-ins'
import { stories } from '@/seed/demo/stories/stories'
import { asRole, createDatabase, databaseUrls, dropDatabase } from '../support/database'
import { clockOffset, count } from '../support/demo-facts'
import { byChance, readAll } from '../support/demo-rows'
import { idsWhere, type StandsByHand, standsByHand } from '../support/region-by-hand'
import { differencesOf } from '../support/same-rows'
import { demoPassword, ownState, type Ran, second, secondUrls, seed } from '../support/tell-demo'

const minutes = 60_000

let files: readonly DiverFile[]
let curriculum: Curriculum
let placed: ReadonlyMap<string, DiverOnPathway>
let loaded: Ran
let loadedRows: Rows
let toldRows: Rows

beforeAll(async () => {
  await createDatabase(second)
  // This file's database has the demo as everybody gets it; the second one is told through the write path.
  const [here, there] = await Promise.all([
    seed(databaseUrls(), ownState()),
    seed(secondUrls(), `${ownState()}-second`, '--tell'),
  ])
  expect([here, there].map(({ code, said }) => (code === 0 ? 'there' : said))).toEqual(['there', 'there'])
  loaded = here
  loadedRows = await readAll(databaseUrls().owner)
  toldRows = await readAll(secondUrls().owner)
  const scope = await officeScope('constance', fixedNow - (await clockOffset()))
  await asAccount(scope.account, async (tx) => {
    curriculum = await getEditionInForce(tx, scope)
    files = await listDiverFiles(tx, scope)
  })
  placed = new Map(
    files.map((file) => {
      const dates = datesOf(curriculum, file.record, asOfInstant(fixedNow, file.zone), file.zone)
      const rows = listTargets(curriculum).map((target) => standingRow(dates, target))
      return [file.id, placeDiver(curriculum, { ...file, rows }, dates.now.date.day)]
    }),
  )
}, 40 * minutes)

afterAll(async () => {
  await closeDatabase()
  await dropDatabase(second)
})

const fileOf = (key: string): DiverFile => {
  const file = files.find(({ id }) => id === coast.diver(key))
  if (!file) throw new Error(`the demo has no diver ${key}`)
  return file
}
const evaluationNow = (key: string) => {
  const file = fileOf(key)
  return evaluationOf(curriculum, file.record, asOfInstant(fixedNow, file.zone))
}
const pathwayOf = (key: string) => placed.get(coast.diver(key))

describe('the demo', () => {
  it('is an invented coast of four clubs, twelve coaches and sixty divers aged seven to nineteen', async () => {
    expect(await count('"Club"')).toBe(4)
    expect(await count(`(SELECT DISTINCT "accountId" FROM "Membership" WHERE "clubId" IS NOT NULL) AS coaches`)).toBe(
      12,
    )
    expect(files).toHaveLength(60)
    const ages = files.map(({ record }) => Math.floor((parseDay('2026-03-14') - (record.born ?? 0)) / 365.25))
    expect([Math.min(...ages), Math.max(...ages)]).toEqual([7, 19])
  })

  it('has two seasons of dives, most of them called, none of them refused or dated ahead', async () => {
    const attempts = files.flatMap(({ record }) => record.attempts)
    expect(attempts.length).toBeGreaterThanOrEqual(20_000)
    expect(attempts.length).toBeLessThan(30_000)
    expect(attempts.filter(({ called }) => called).length / attempts.length).toBeGreaterThan(0.7)
    expect(attempts.filter(({ futureDated }) => futureDated)).toEqual([])
    expect(attempts.every(({ observations }) => observations.length > 0)).toBe(true)
    expect(attempts.every(({ receivedAt }) => receivedAt <= fixedNow)).toBe(true)
  })

  it('has what only some dives have: notes, moments, a second coach on video, corrections with their reasons', async () => {
    expect(await count('"Moment"')).toBeGreaterThan(2_000)
    expect(await count(`"Moment" WHERE "link" LIKE '/media/clips/%.webm'`)).toBeGreaterThan(100)
    expect(
      await count(`"Moment" WHERE "link" NOT LIKE 'https://%.example/%' AND "link" NOT LIKE '/media/clips/%.webm'`),
    ).toBe(0)
    expect(await count(`"Observation" WHERE "observedOn" = 'video'`)).toBeGreaterThan(60)
    expect(await count('"Observation" WHERE "supersedesId" IS NOT NULL AND "reasonId" IS NOT NULL')).toBeGreaterThan(20)
    expect(await count('"Observation" WHERE "noteId" IS NOT NULL')).toBeGreaterThan(40)
  })

  it('has all four statuses among what is put before the head coaches', () => {
    const statuses = stories.flatMap(({ key }) => {
      const evaluation = evaluationNow(key)
      return listTargets(curriculum).map((target) => readTarget(evaluation, target).finding.status)
    })
    expect(new Set(statuses)).toEqual(new Set(['met', 'lapsed', 'unproven', 'unmet']))
  })

  it('fills every column of the region, whose totals are those of its lists', () => {
    const places = [...placed.values()]
    const ids = clubs.map(({ key }) => coast.club(key))
    const subject = { curriculum, clubs: ids, divers: places, filter: everybody }
    const levels = levelTable(subject, 'step')
    const moves = movesIn(curriculum, everybody)
    const byMove = moveTable(subject, moves, 'club')
    const total = (rows: readonly CountRow[], figure: (typeof figures)[number]) =>
      rows.reduce((sum, row) => sum + (row.figures.get(figure)?.length ?? 0), 0)
    const all = (rows: readonly CountRow[]) => figures.reduce((sum, figure) => sum + total(rows, figure), 0)
    expect(all(levels)).toBe(files.length)
    expect(all(byMove)).toBe(files.length * moves.length)
    for (const figure of ['ready', 'near', 'held up', 'on the way', 'held'] as const)
      expect(total(levels, figure), figure).toBeGreaterThan(0)
    for (const figure of ['ready', 'near', 'on the way', 'to review', 'held'] as const)
      expect(total(byMove, figure), figure).toBeGreaterThan(0)
    expect(new Set(places.map(({ level }) => level))).toEqual(new Set([-1, 0, 1, 2, 3, 4, 5, 6]))
  })
})

describe('the region', () => {
  it('counts from kept rows whom the evaluator finds in the raw ones, diver by diver, by club, age and step', async () => {
    const scope = await officeScope('constance', fixedNow - (await clockOffset()))
    const { divers } = await readStandings(scope)
    const counted = divers.map((diver) => placeDiver(curriculum, diver, dayIn(scope.at, scope.zone)))
    const byHand = files.map((file) => standsByHand(curriculum, file, fixedNow))
    expect(counted.map(({ id }) => id).sort()).toEqual(idsWhere(byHand, () => true))
    for (const diver of counted) expect(diver).toEqual(placed.get(diver.id))
    const subject = { curriculum, clubs: clubs.map(({ key }) => coast.club(key)), divers: counted, filter: everybody }
    const moves = movesIn(curriculum, everybody)
    let rows = 0
    for (const by of groupings)
      for (const { narrows, move, figures } of [...levelTable(subject, by), ...moveTable(subject, moves, by)]) {
        const isHere = ({ club, age, level }: StandsByHand) =>
          (narrows.club ?? club) === club && (narrows.age ?? age) === age && (narrows.level ?? level) === level
        for (const [figure, ids] of figures)
          expect([...ids].sort()).toEqual(
            idsWhere(byHand, (one) => isHere(one) && (move ? one.figures.get(move) : one.next) === figure),
          )
        rows++
      }
    expect(rows).toBeGreaterThan(20)
  }, 300_000)
})

describe('the stories', () => {
  it('leave advancements in the queue: a first level, a second level, a board move', () => {
    expect(readTarget(evaluationNow('idris'), 'level:soundings').ready).toBe(true)
    expect(readTarget(evaluationNow('leilani'), 'level:bearings').ready).toBe(true)
    expect(readTarget(evaluationNow('wren'), 'move:forward:3m').ready).toBe(true)
  })

  it('have a ready move whose films were gone through: one question stands, and some did not open', async () => {
    const scope = await officeScope('oluwaseun', fixedNow - (await clockOffset()))
    expect(scope.clubs).not.toContain(coast.club('saltmarsh'))
    const head = await coachScope('marguerite', fixedNow - (await clockOffset()))
    const desk = await readDiver(head, coast.diver('wren'))
    const { checks = [], texts } = desk?.questions ?? {}
    const found = readTarget(evaluationNow('wren'), 'move:forward:3m')
    const standing = standingQuestions({ checks, answers: [], said: [] }, fileOf('wren').record.attempts)
    expect(questionsUnder(standing, found)).toHaveLength(1)
    expect(texts?.get(standing[0]?.asked.id ?? '')).toContain('past vertical')
    const moments = checks.map(({ moment }) => moment)
    const tally = tallyChecks(checks, moments, coast.account('marguerite'))
    expect(tally).toMatchObject({ questioned: 1, accepted: moments.length - 1 - tally.unreachable })
    expect(tally.unreachable).toBeGreaterThan(0)
    expect(tally.accepted).toBeGreaterThan(3)
    expect(await readDiver(scope, coast.diver('wren'))).toBeNull()
  })

  it('have a returned move that has not come back', () => {
    const found = readTarget(evaluationNow('mateus'), 'move:forward:3m')
    expect(found.finding.status).toBe('met')
    expect(found.blocks.map(({ kind }) => kind)).toContain('returned')
  })

  it('have a diver who is held up by one criterion', () => {
    expect(pathwayOf('saoirse')?.next?.figure).toBe('held up')
    expect(readTarget(evaluationNow('saoirse'), 'level:bearings').finding.status).toBe('unmet')
    expect(evaluationNow('saoirse').history('101C@1m')?.attempts.length).toBeGreaterThan(20)
  })

  it('have one whose club lacks the board, and one who moved for it and took the record along', () => {
    const reasons = (finding: Finding): string[] => [finding.reason.code, ...finding.children.flatMap(reasons)]
    expect(reasons(readTarget(evaluationNow('tomasz'), 'move:forward:3m').finding)).toContain('venue lacks it')
    const vidar = fileOf('vidar')
    expect(vidar.club).toBe(coast.club('northquay'))
    const wrote = new Set(vidar.record.attempts.map(({ club }) => club))
    expect(wrote).toEqual(new Set([coast.club('harrow-point'), coast.club('northquay')]))
  })

  it('have a standing shortfall that puts a sign-off in doubt, and what was approved on it to review', () => {
    const evaluation = evaluationNow('dario')
    const { state, by } = evaluation.holdings.of('101C@1m')
    expect([state, ...new Set(by?.doubts.map(({ kind }) => kind))]).toEqual(['in doubt', 'shortfall'])
    expect(readTarget(evaluation, 'level:bearings').held).toBe('to review')
  })

  it('have one who is back after a lay-off and one who is stood down', () => {
    expect(readTarget(evaluationNow('anouk'), 'level:bearings').blocks.map(({ kind }) => kind)).toContain('lay-off')
    expect(readTarget(evaluationNow('amara'), 'level:offing').blocks.map(({ kind }) => kind)).toContain('stand-down')
  })

  it('have incidents to clear, one that was cleared, divers who have grown, and consents that are missing', async () => {
    const { openIncidents, consents } = await readToDo(
      await officeScope('oluwaseun', fixedNow - (await clockOffset())),
      stories.map((story) => coast.diver(story.key)),
    )
    expect(openIncidents(coast.diver('pia'))).toBe(0)
    expect(consents(coast.diver('pia')).record).toBeNull()
    expect(consents(coast.diver('zuri')).record?.given).toBe(true)
    expect(openState(evaluationNow('tamsin'), 'jump-standing@1m').because).toMatchObject({ kind: 'pause' })
    expect(openState(evaluationNow('torin'), '401C@1m').because).toMatchObject({ kind: 'pause' })
    expect(evaluationNow('ilse').record.incidents).toMatchObject([{ kind: 'too close', clearedAt: expect.any(Number) }])
    const grown = await asRole('owner', (client) => client.query('SELECT "diverId" FROM "GrowthNote"'))
    expect(grown.rows.map(({ diverId }) => diverId).sort()).toEqual([coast.diver('calla'), coast.diver('kofi')].sort())
  })

  it('have a club with one coach, whose sign-offs stand by override, and recognised levels at every height', () => {
    const overrides = fileOf('freya').record.signOffs.filter(({ waiver }) => waiver?.coaches)
    expect(overrides.length).toBeGreaterThan(5)
    expect(readTarget(evaluationNow('beatrix'), 'level:landfall').held).toBe('recognised')
  })

  it('have a strict coach and a kind one: where both saw a dive, one rates it lower by more than a third of a point', () => {
    const [strict, kind] = [coast.account('ines'), coast.account('birk')]
    const differences = files.flatMap(({ record }) =>
      record.attempts.flatMap(({ observations }) => {
        const by = (coach: string) => observations.find((one) => one.coach === coach)?.ratings ?? {}
        const [low, high] = [by(strict), by(kind)]
        return Object.keys(low).flatMap((key) => (high[key] === undefined ? [] : [high[key] - (low[key] ?? 0)]))
      }),
    )
    expect(differences.length).toBeGreaterThan(100)
    expect(differences.reduce((sum, one) => sum + one, 0) / differences.length).toBeGreaterThan(1 / 3)
  })
})

describe('the prepared demo', () => {
  const again = `Write the prepared demo again: ${writeAgain}`
  const orName = `${again} (and name a new column that chance makes in tests/support/demo-rows.ts)`

  it('fits the seed and the migrations, and is what was loaded', () => {
    const prepared = readPrepared()
    expect(prepared.ok ? 'fits' : `${prepared.why}. ${again}`).toBe('fits')
    expect(loaded.said).toBe('')
  })

  it('is row by row what the write path yields, but for what chance makes anew', () => {
    expect(toldRows.get('Attempt')?.length).toBeGreaterThan(20_000)
    expect(differencesOf(loadedRows, toldRows, byChance), orName).toEqual([])
  })

  it('would not be, with one rating changed', () => {
    const [first, ...rest] = loadedRows.get('Observation') ?? []
    const changed = { ...first, ratings: { 'no-such-criterion': 1 } }
    const found = differencesOf(new Map([...loadedRows, ['Observation', [changed, ...rest]]]), toldRows, byChance)
    expect(found.map((line) => line.split(':')[0])).toEqual([
      'Observation, only in the first',
      'Observation, only in the second',
    ])
  })
})

describe('the telling', () => {
  it('writes the ledger in the order of the clock, without a gap', async () => {
    const { rows } = await asRole('owner', (client) =>
      client.query<{ seq: string; at: Date }>('SELECT "seq", "at" FROM "Ledger" ORDER BY "seq"'),
    )
    expect(rows.map(({ seq }) => Number(seq))).toEqual(rows.map((_, index) => index + 1))
    const times = rows.map(({ at }) => at.getTime())
    expect(times).toEqual([...times].sort((a, b) => a - b))
  })

  it('leaves readiness rows that agree with the reference evaluator', async () => {
    const { differences, divers } = await checkReadiness(
      await officeScope('constance', fixedNow - (await clockOffset())),
    )
    expect({ divers, differences }).toEqual({ divers: 60, differences: [] })
  })

  it('stands at its fixed today and goes on from there', async () => {
    const offset = await clockOffset()
    const account = coast.account('emeka')
    const actor = await findActor(account, account, Date.now())
    expect(actor?.programme).toMatchObject({ isDemo: true, clockOffset: offset })
    const since = actor ? programmeTime(actor, Date.now()) - fixedNow : Number.NaN
    expect(since).toBeGreaterThanOrEqual(0)
    expect(since).toBeLessThan(30 * minutes)
  })

  it('gives thirteen sign-ins, which work; the coach who left has none', async () => {
    const noted = JSON.parse(fs.readFileSync(path.join(ownState(), 'demo-sign-ins.json'), 'utf8'))
    expect(noted).toEqual(demoSignIns)
    const shown = await listDemoSignIns()
    expect(shown.map(({ email }) => email)).toEqual(demoSignIns.map(({ email }) => email))
    expect(shown).toHaveLength(13)
    for (const { email } of shown) {
      expect(email).toMatch(/\.example$/)
      expect((await openSession(email, demoPassword, Date.now())).result).toBe('open')
    }
  })

  it('is not told twice, and half a demo is not taken for one', async () => {
    const before = await count('"Ledger"')
    expect(await seed(databaseUrls(), ownState())).toMatchObject({ code: 0, said: '' })
    expect(await count('"Ledger"')).toBe(before)
    const client = new pg.Client({ connectionString: secondUrls().owner })
    await client.connect()
    await client.query('UPDATE "Programme" SET "isDemo" = false, "clockOffsetMs" = 0')
    await client.end()
    const half = await seed(secondUrls(), `${ownState()}-second`)
    expect(half.code).toBe(3)
    expect(half.said).toContain('make the database empty')
  })
})
