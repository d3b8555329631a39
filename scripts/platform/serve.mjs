import { ensureBuilt } from './build.mjs'
import { prepareDatabase } from './contents.mjs'
import { openDatabase } from './database.mjs'
import { demoSignIns, keepDemoClock } from './demo.mjs'
import { ensureInstalled } from './install.mjs'
import { becomeInstance, endInstance, noteWeb, stopOrphanedWeb } from './instance.mjs'
import { makeStateFolder } from './lock.mjs'
import { inState, stateFolder } from './paths.mjs'
import { holderOf, isFree, nextFreePort } from './ports.mjs'
import { endChildren } from './processes.mjs'
import { Refusal, say, step } from './progress.mjs'
import { getSecrets } from './secrets.mjs'
import { addressOf, isLoopback, startWeb, stopWeb, webEnv } from './web.mjs'

/** `PORT` and `HOST` as given; null: any port from 3000 on. */
function wishes() {
  const { PORT, HOST = '127.0.0.1' } = process.env
  if (!PORT) return { port: null, host: HOST }
  if (!/^\d{1,5}$/.test(PORT) || Number(PORT) < 1 || Number(PORT) > 65_535)
    throw new Refusal(`PORT=${PORT} is not a port; give a number from 1 to 65535.`)
  return { port: Number(PORT), host: HOST }
}

/** @param {ReturnType<typeof wishes>} wishes */
async function choosePort({ port, host }) {
  if (port === null) {
    return nextFreePort(3000, host)
  }
  if (await isFree(port, host)) return port
  throw new Refusal(`Port ${port} is taken by ${holderOf(port)}. Stop that, or give another PORT.`)
}

/** Ctrl-C, a signal, a closed terminal, or the end of the npm that started us. */
function untilToldToStop() {
  const parent = process.ppid
  return new Promise((resolve) => {
    for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, resolve)
    // npm hands SIGTERM to its shell only, and does not end us.
    setInterval(() => process.ppid !== parent && resolve('orphaned'), 1_000).unref()
  })
}

/** @param {string} url @param {boolean} demo @param {string} password */
function announce(url, demo, password) {
  const signIns = demo ? demoSignIns() : []
  const width = (/** @type {'role' | 'email'} */ column) => Math.max(0, ...signIns.map((row) => row[column].length))
  const rows = signIns.map(
    (row) => `    ${row.role.padEnd(width('role'))}  ${row.email.padEnd(width('email'))}  ${row.note}`,
  )
  const table = rows.length > 0 ? [`  Demo sign-ins; the password of each is ${password}`, ...rows, ''] : []
  process.stdout.write(
    ['', `  Plumbline is at ${url}`, '', ...table, '  Ctrl-C stops it; the data stay.', ''].join('\n'),
  )
}

/**
 * What two works yield, once both have ended; throws what the first one that failed threw.
 * @template A, B @param {Promise<A>} first @param {Promise<B>} second @returns {Promise<[A, B]>}
 */
async function both(first, second) {
  await Promise.allSettled([first, second])
  return Promise.all([first, second])
}

/**
 * Everything from a clone to a page that answers, then waits.
 * @param {(() => unknown)[]} closing what must be undone, in order
 * @param {Promise<unknown>} told
 */
async function bringUp(closing, told) {
  const { host, ...wish } = wishes()
  await stopOrphanedWeb()
  // Before anything that takes long; again when it is about to be used.
  await choosePort({ host, ...wish })
  await ensureInstalled()
  const secrets = getSecrets()
  const database = await openDatabase(secrets)
  closing.unshift(() => database.close())
  // Neither waits for the other; when one fails, the other is still let finish before the database is closed.
  const [folder, { demo }] = await both(ensureBuilt('.next', secrets.actionsKey), prepareDatabase(database, secrets))
  if (demo && !isLoopback(host))
    throw new Refusal(
      `The demo's sign-ins share one password that is shown on the sign-in page: with them loaded, Plumbline serves on this machine alone. Leave HOST=${host} out.`,
    )
  const port = await choosePort({ host, ...wish })
  if (wish.port === null && port !== 3000) say(`port 3000 is taken by ${holderOf(3000)}: serving on ${port}`)
  const url = process.env.NEXTAUTH_URL ?? addressOf(host, port)
  const env = webEnv({ host, port, url, appUrl: database.appUrl, secrets, stateFolder, demo })
  const { server, ended } = await step('start the web server', () =>
    startWeb({ folder, env, url: addressOf(host, port), log: inState('logs/web.log') }),
  )
  closing.unshift(() => stopWeb(server))
  noteWeb(server, url)
  if (demo) keepDemoClock()
  announce(url, demo, secrets.demoPassword)
  return Promise.race([told.then(() => 0), ended.then(() => 1)])
}

/** @returns {Promise<number>} exit code */
export async function serve() {
  makeStateFolder()
  const other = await becomeInstance()
  if (other) {
    process.stdout.write(`Plumbline is already running: ${other}\n`)
    return 0
  }
  let stopping = false
  const told = untilToldToStop().then(() => {
    stopping = true
    say('stopping')
    endChildren()
  })
  const closing = [endInstance]
  try {
    const code = await bringUp(closing, told)
    if (code !== 0) say(`the web server ended by itself; its log is ${inState('logs/web.log')}`)
    return code
  } catch (error) {
    if (stopping) return 0
    throw error
  } finally {
    for (const close of closing) await close()
  }
}
