import { spawn } from 'node:child_process'
import { databaseEnv, migrateDatabase, prepareDatabase } from './platform/contents.mjs'
import { openDatabase } from './platform/database.mjs'
import { ensureInstalled, typescript } from './platform/install.mjs'
import { runningAddress } from './platform/instance.mjs'
import { withLock } from './platform/lock.mjs'
import { root } from './platform/paths.mjs'
import { explain, setPatience } from './platform/progress.mjs'
import { getSecrets } from './platform/secrets.mjs'

/** `npm run -s plumbline -- COMMAND`: prepares what the command needs, then hands over to plumbline.ts. */

const needDatabase = ['divers', 'readiness', 'rebuild']
/** These begin a programme of one's own: where there is none, they do not load the demo. */
const begin = ['programme', 'club', 'invite']

/** @param {string[]} args @param {NodeJS.ProcessEnv} env @returns {Promise<number>} */
const runCommand = (args, env) =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...typescript('scripts/plumbline.ts'), ...args], {
      cwd: root,
      env,
      stdio: 'inherit',
    })
    child.on('error', reject)
    child.on('exit', (code) => resolve(code ?? 1))
  })

/** @param {string[]} args */
async function withDatabase(args) {
  const secrets = getSecrets()
  const database = await openDatabase(secrets)
  try {
    if (begin.includes(args[0] ?? '')) await withLock('database', () => migrateDatabase(database, secrets))
    else await prepareDatabase(database, secrets)
    const address = process.env.NEXTAUTH_URL ?? runningAddress() ?? 'http://127.0.0.1:3000'
    return await runCommand(args, { ...databaseEnv(database, secrets), NEXTAUTH_URL: address })
  } finally {
    await database.close()
  }
}

/** @param {string[]} args */
async function main(args) {
  setPatience(1_500)
  await ensureInstalled()
  const asksForHelp = args.includes('--help') || args.includes('-h')
  return [...needDatabase, ...begin].includes(args[0] ?? '') && !asksForHelp
    ? withDatabase(args)
    : runCommand(args, process.env)
}

// Ctrl-C reaches the command as well; the database is closed when the command has ended.
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => {})
try {
  process.exitCode = await main(process.argv.slice(2))
} catch (error) {
  process.stderr.write(`${explain(error)}\n`)
  process.exitCode = 1
}
