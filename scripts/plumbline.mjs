import { spawn } from 'node:child_process'
import { databaseEnv, prepareDatabase } from './platform/contents.mjs'
import { openDatabase } from './platform/database.mjs'
import { ensureInstalled, typescript } from './platform/install.mjs'
import { root } from './platform/paths.mjs'
import { explain, setPatience } from './platform/progress.mjs'
import { getSecrets } from './platform/secrets.mjs'

/** `npm run -s plumbline -- COMMAND`: prepares what the command needs, then hands over to plumbline.ts. */

const needDatabase = ['divers', 'readiness', 'rebuild']

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
    await prepareDatabase(database, secrets)
    return await runCommand(args, databaseEnv(database, secrets))
  } finally {
    await database.close()
  }
}

/** @param {string[]} args */
async function main(args) {
  setPatience(1_500)
  await ensureInstalled()
  const asksForHelp = args.includes('--help') || args.includes('-h')
  return needDatabase.includes(args[0] ?? '') && !asksForHelp ? withDatabase(args) : runCommand(args, process.env)
}

// Ctrl-C reaches the command as well; the database is closed when the command has ended.
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => {})
try {
  process.exitCode = await main(process.argv.slice(2))
} catch (error) {
  process.stderr.write(`${explain(error)}\n`)
  process.exitCode = 1
}
