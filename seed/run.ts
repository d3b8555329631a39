import fs from 'node:fs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import pg from 'pg'
import { publishEdition } from '../lib/assessment/store/publish'
import { readStandings } from '../lib/assessment/store/standings'
import { type EpochDay, formatDay, parseDay } from '../lib/assessment/time'
import { setGuideOpening } from '../lib/curriculum/store/guide-opening'
import { closeDatabase } from '../lib/platform/db'
import { getEnv } from '../lib/platform/env'
import { endMemberships } from './builders/people'
import { markAsDemo } from './builders/programme'
import { coast, enterCoast } from './demo/bootstrap'
import { clubs } from './demo/coast'
import { tellExemplars } from './demo/exemplars'
import { coachScope, officeScope } from './demo/hands'
import { preparedFolder, readPrepared, writeAgain } from './demo/prepared/file'
import { loadRows } from './demo/prepared/load'
import { firstDay, fixedNow, instantOn, today } from './demo/season'
import { demoSignIns } from './demo/sign-ins'
import { leavers, tellSeason } from './demo/tell'
import { readCurriculumFolder } from './read-curriculum'

/** What to do about a database that holds half a demo: the launcher drops it and begins again. */
const halfFilled = 3

type State = 'empty' | 'filled' | 'half-filled'

async function stateOf(owner: pg.Client): Promise<State> {
  const { rows } = await owner.query<{ id: string; isDemo: boolean; clockOffsetMs: string }>(
    'SELECT "id", "isDemo", "clockOffsetMs" FROM "Programme"',
  )
  if (rows.length === 0) return 'empty'
  // The demo is marked as one, and its clock set, only when all of it is there.
  const half = rows.some((row) => row.id === coast.programme && !row.isDemo && row.clockOffsetMs === '0')
  return half ? 'half-filled' : 'filled'
}

async function inTransaction(owner: pg.Client, work: () => Promise<void>): Promise<void> {
  await owner.query('BEGIN')
  try {
    await work()
    await owner.query('COMMIT')
  } catch (error) {
    await owner.query('ROLLBACK')
    throw error
  }
}

async function publish(): Promise<void> {
  const folder = path.join(import.meta.dirname, 'curriculum')
  const { document, problems } = readCurriculumFolder(folder)
  const published =
    document && (await publishEdition(await officeScope('emeka', instantOn(firstDay - 7, 11)), document))
  if (published?.ok) return
  const [first] = published
    ? published.problems.map(({ path: at, message }) => `${at}: ${message}`)
    : problems.map(({ place, message }) => `${place}: ${message}`)
  throw new Error(`the demo's curriculum cannot be published: ${first ?? folder}`)
}

interface Asked {
  /** The last day of the season to tell. */
  readonly until: EpochDay
  /** The folder of the prepared demo; null: the season is told, prepared or not. */
  readonly prepared: string | null
}

/** `--tell`, `--until YYYY-MM-DD` and `--prepared FOLDER`, for the tests and for who prepares the demo. */
function readAsked(): Asked {
  const options = {
    tell: { type: 'boolean', default: false },
    until: { type: 'string' },
    prepared: { type: 'string', default: preparedFolder },
  } as const
  const { tell, until, prepared } = parseArgs({ options }).values
  return { until: until === undefined ? today : parseDay(until), prepared: tell ? null : prepared }
}

/** Tells the demo into an empty database. */
async function tell(owner: pg.Client, password: string, until: number): Promise<void> {
  await inTransaction(owner, () => enterCoast(owner, password))
  await publish()
  await setGuideOpening(await officeScope('emeka', instantOn(firstDay - 7, 12)), { open: true, listed: false })
  const said = (day: number, dives: number) => {
    if (day % 14 === 0) process.stderr.write(`  the season up to ${formatDay(day)}: ${dives} dives\n`)
  }
  const dives = await tellSeason(until, said)
  if (until === today) await tellExemplars()
  // The season was told without working out readiness on the way: it is done once, as the region's page would, but club by
  // club, for one transaction over everybody outlasts its time on a busy machine.
  for (const { head } of clubs) await readStandings(await coachScope(head, fixedNow))
  await readStandings(await officeScope('constance', fixedNow))
  await inTransaction(owner, async () => {
    for (const { key, on } of leavers) await endMemberships(owner, coast.account(key), new Date(`${on}T00:00:00Z`))
    // From here on the demo lives: its clock stands at its fixed today and runs as ours does.
    await markAsDemo(owner, coast.programme, fixedNow - Date.now())
  })
  process.stderr.write(`  the demo is there: ${dives} dives\n`)
}

/** Loads the prepared demo into an empty database; answers why not, where the season is to be told instead. */
async function load(owner: pg.Client, password: string, folder: string): Promise<string | null> {
  const prepared = readPrepared(folder)
  if (!prepared.ok) return prepared.why
  try {
    await loadRows(owner, prepared.rows, { password, clockOffset: fixedNow - Date.now() })
    return null
  } catch (error) {
    return `the database refuses it (${error instanceof Error ? error.message : String(error)})`
  }
}

/** Fills an empty database with the demo: as it is prepared, or by telling it. */
async function fill(owner: pg.Client, password: string, { until, prepared }: Asked): Promise<void> {
  const { stateFolder } = getEnv()
  fs.mkdirSync(stateFolder, { recursive: true })
  fs.writeFileSync(path.join(stateFolder, 'demo-sign-ins.json'), `${JSON.stringify(demoSignIns, null, 2)}\n`)
  const why = prepared === null ? null : await load(owner, password, prepared)
  if (why !== null)
    process.stderr.write(
      `  The prepared demo is not used: ${why}. The season is told instead, which takes minutes; \`${writeAgain}\` prepares it again.\n`,
    )
  if (prepared === null || why !== null) await tell(owner, password, until)
}

async function run(): Promise<number> {
  const { databaseOwnerUrl, demoPassword } = getEnv()
  if (!databaseOwnerUrl || !demoPassword)
    throw new Error('DATABASE_URL (of the owner) and PLUMBLINE_DEMO_PASSWORD must be set to load the demo.')
  const owner = new pg.Client({ connectionString: databaseOwnerUrl })
  await owner.connect()
  try {
    const state = await stateOf(owner)
    if (state === 'half-filled') {
      process.stderr.write('Loading the demo was interrupted: make the database empty and load it again.\n')
      return halfFilled
    }
    if (state === 'empty') await fill(owner, demoPassword, readAsked())
    return 0
  } finally {
    await closeDatabase()
    await owner.end()
  }
}

run()
  .then((code) => {
    process.exitCode = code
  })
  .catch((error: unknown) => {
    process.stderr.write(`The demo was not loaded: ${error instanceof Error ? error.message : String(error)}\n`)
    process.exitCode = 1
  })
