import { createHash } from 'node:crypto'
import fs from 'node:fs'
import { demoIdleMs } from './demo.mjs'
import { typescript } from './install.mjs'
import { withLock } from './lock.mjs'
import { inRoot, root } from './paths.mjs'
import { run } from './processes.mjs'
import { Refusal, step } from './progress.mjs'

/** @typedef {import('./database.mjs').Database} Database */
/** @typedef {import('./secrets.mjs').Secrets} Secrets */
/** @typedef {{ applied: string[], empty: boolean, demo: boolean }} Prepared */

/** @param {Database} database @param {Secrets} secrets */
export const databaseEnv = (database, secrets) => ({
  ...process.env,
  DATABASE_URL: database.ownerUrl,
  DATABASE_APP_URL: database.appUrl,
  PLUMBLINE_DEMO_PASSWORD: secrets.demoPassword,
  PLUMBLINE_STATE: database.folder,
})

/**
 * Roles, database, migrations.
 * @param {Database} database @param {Secrets} secrets @param {string[]} [flags] @returns {Promise<Prepared>}
 */
export async function migrateDatabase(database, secrets, flags = []) {
  const out = await run(process.execPath, [...typescript('scripts/database/prepare.ts'), ...flags], {
    cwd: root,
    env: { ...databaseEnv(database, secrets), PLUMBLINE_ADMIN_URL: database.adminUrl ?? '' },
    log: `${database.folder}/logs/database.log`,
    what: 'Preparing the database',
  })
  return JSON.parse(out)
}

/** @param {Database} database @param {Secrets} secrets */
async function loadDemo(database, secrets) {
  await run(process.execPath, typescript('seed/run.ts'), {
    cwd: root,
    env: databaseEnv(database, secrets),
    log: `${database.folder}/logs/demo.log`,
    what: 'Loading the demo',
    show: true,
  })
}

/** The note that the demo is being loaded, for one database. @param {Database} database */
function loadingNote({ folder, adminUrl, ownerUrl }) {
  const name = adminUrl ? 'own' : createHash('sha256').update(ownerUrl).digest('hex').slice(0, 12)
  return `${folder}/loading-${name}`
}

/**
 * Migrates, and fills an empty database with the demo. A loading that was interrupted left nothing, or where the season had to
 * be told, half a demo and nothing else: it is begun again. The demo's clock stands still while nobody uses the database.
 * @param {Database} database @param {Secrets} secrets @returns {Promise<Prepared>}
 */
export async function fillDatabase(database, secrets) {
  const note = loadingNote(database)
  const interrupted = fs.existsSync(note)
  const anew = interrupted && database.adminUrl !== null
  const flags = [...(anew ? ['--anew'] : []), `--idle=${demoIdleMs(database.folder)}`]
  const prepared = await step('prepare the database', () => migrateDatabase(database, secrets, flags))
  if (interrupted && !prepared.empty && !prepared.demo)
    throw new Refusal(
      `Loading the demo into DATABASE_URL was interrupted. Make that database empty, remove ${note}, start again.`,
    )
  if (!prepared.empty || !fs.existsSync(inRoot('seed/run.ts'))) {
    fs.rmSync(note, { force: true })
    return prepared
  }
  fs.writeFileSync(note, '')
  await step('load the demo', () => loadDemo(database, secrets))
  fs.rmSync(note)
  return { ...prepared, empty: false, demo: true }
}

/** The same for the installation's database, one process at a time. @param {Database} database @param {Secrets} secrets */
export const prepareDatabase = (database, secrets) => withLock('database', () => fillDatabase(database, secrets))
