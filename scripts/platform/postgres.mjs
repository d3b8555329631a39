import { spawn, spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { freePort } from './ports.mjs'
import { makeDatabaseFolder } from './postgres-home.mjs'
import { commandLine, identify, isRunning, stop, tail } from './processes.mjs'
import { Refusal } from './progress.mjs'

/**
 * A PostgreSQL of our own: its programs are spawned directly, in a process group of their own, so that Ctrl-C reaches
 * only the script, which then stops it in order.
 * @typedef {{ server: import('./processes.mjs').Identity, port: number, adopted: boolean }} Running
 * @typedef {import('./postgres-home.mjs').Programs} Programs
 */

/** @returns {NodeJS.ProcessEnv} */
const environment = () => ({ PATH: process.env.PATH, LC_ALL: 'C', TZ: 'UTC', NODE_ENV: process.env.NODE_ENV })

/**
 * Makes the cluster. Interrupted, it leaves nothing that looks like one.
 * @param {string} data @param {string} password @param {Programs} programs @param {boolean} durable
 */
function initialise(data, password, programs, durable) {
  const draft = `${data}.new`
  const passwordFile = `${data}.password`
  fs.rmSync(draft, { recursive: true, force: true })
  makeDatabaseFolder(draft, programs)
  fs.writeFileSync(passwordFile, password, { mode: 0o600 })
  if (programs.user.uid !== undefined && programs.user.gid !== undefined)
    fs.chownSync(passwordFile, programs.user.uid, programs.user.gid)
  const flags = [
    '-D',
    draft,
    '-U',
    'postgres',
    `--pwfile=${passwordFile}`,
    '--auth=scram-sha-256',
    '--locale=C',
    '-E',
    'UTF8',
  ]
  const result = spawnSync(path.join(programs.native, 'bin/initdb'), durable ? flags : [...flags, '--no-sync'], {
    ...programs.user,
    cwd: path.dirname(data),
    env: environment(),
    encoding: 'utf8',
  })
  fs.rmSync(passwordFile, { force: true })
  if (result.status !== 0)
    throw new Refusal(`PostgreSQL could not make its data folder ${draft}:\n${result.stderr}${result.error ?? ''}`)
  fs.renameSync(draft, data)
}

/** Lines of postmaster.pid: 1 process, 4 port, 8 state. @param {string} data */
function postmaster(data) {
  try {
    const lines = fs.readFileSync(path.join(data, 'postmaster.pid'), 'utf8').split('\n')
    return { pid: Number(lines[0]), port: Number(lines[3]), ready: lines[7]?.trim() === 'ready' }
  } catch {
    return null
  }
}

/** The server that holds this folder already, if one does. @param {string} data @returns {Promise<Running | null>} */
async function adopt(data) {
  const until = Date.now() + 60_000
  for (let found = postmaster(data); found; found = postmaster(data)) {
    const server = identify(found.pid)
    if (server.began === '') return null
    if (!commandLine(found.pid).includes(data)) {
      // The number has gone to some other program: PostgreSQL would take it for a server that still runs.
      fs.rmSync(path.join(data, 'postmaster.pid'))
      return null
    }
    if (found.ready) return { server, port: found.port, adopted: true }
    if (Date.now() > until)
      throw new Refusal(`PostgreSQL (process ${found.pid}) neither starts nor stops. End it, then start again.`)
    await sleep(50)
  }
  return null
}

/** @param {string} data @param {Programs} programs */
function requireSameVersion(data, programs) {
  const made = fs.readFileSync(path.join(data, 'PG_VERSION'), 'utf8').trim()
  const ours = spawnSync(path.join(programs.native, 'bin/postgres'), ['--version'], {
    encoding: 'utf8',
    cwd: '/',
  }).stdout
  if (!ours.includes(` ${made}.`))
    throw new Refusal(
      `${data} was made by PostgreSQL ${made}; this is ${ours.trim()}. Dump it with the older version, move the folder away, start, and load the dump.`,
    )
}

/**
 * Starts the server on a free port of 127.0.0.1, or takes over the one that already serves this folder.
 * @param {{ data: string, log: string, password: string, programs: Programs, settings?: Record<string, string | number> }} options
 * @returns {Promise<Running>}
 */
export async function startPostgres({ data, log, password, programs, settings = {} }) {
  if (!fs.existsSync(path.join(data, 'PG_VERSION'))) initialise(data, password, programs, settings.fsync !== 'off')
  requireSameVersion(data, programs)
  // A command may be the first thing that is ever run here.
  fs.mkdirSync(path.dirname(log), { recursive: true })
  for (let tries = 1; ; tries++) {
    const running = await adopt(data)
    if (running) return running
    const port = await freePort()
    const all = { port, listen_addresses: '127.0.0.1', unix_socket_directories: '', ...settings }
    const flags = Object.entries(all).flatMap(([name, value]) => ['-c', `${name}=${value}`])
    const file = fs.openSync(log, 'a', 0o600)
    const child = spawn(path.join(programs.native, 'bin/postgres'), ['-D', data, ...flags], {
      ...programs.user,
      cwd: path.dirname(data),
      env: environment(),
      detached: true,
      stdio: ['ignore', file, file],
    })
    fs.closeSync(file)
    child.unref()
    let ended = false
    for (const event of ['exit', 'error']) child.once(event, () => (ended = true))
    const server = identify(child.pid ?? 0)
    while (!ended) {
      const found = postmaster(data)
      if (found?.ready && found.pid === child.pid) return { server, port, adopted: false }
      await sleep(20)
    }
    // The port may have been taken meanwhile, or workers of a killed server still hold its memory for a moment.
    if (tries === 4)
      throw new Refusal(`PostgreSQL did not start. Its last words, all of them in ${log}:\n${tail(log, 20)}`)
    await sleep(tries * 500)
  }
}

/** Fast shutdown: sessions are cut, what was committed is safe. @param {Running} running */
export const stopPostgres = ({ server }) => (isRunning(server) ? stop(server, 'SIGINT', 30_000, 'SIGQUIT') : undefined)
