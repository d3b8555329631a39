import { execFileSync, spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { Refusal } from './progress.mjs'

/**
 * A process as it can be recognised later: a number alone is reused by the system.
 * @typedef {{ pid: number, began: string }} Identity
 */

const hasProc = fs.existsSync('/proc/self/stat')

/** @param {string} command @param {string[]} args */
function ask(command, args) {
  try {
    return execFileSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()
  } catch {
    return ''
  }
}

/** @param {string} file */
function read(file) {
  try {
    return fs.readFileSync(file, 'utf8')
  } catch {
    return ''
  }
}

/** When the process began, in the system's own words; '' when there is no such process. @param {number} pid */
function beginning(pid) {
  if (!hasProc) return ask('ps', ['-o', 'lstart=', '-p', String(pid)])
  const fields = read(`/proc/${pid}/stat`).split(') ').at(-1)?.split(' ') ?? []
  return fields[0] === 'Z' ? '' : (fields[19] ?? '')
}

/** @param {number} pid */
export const commandLine = (pid) =>
  hasProc ? read(`/proc/${pid}/cmdline`).replaceAll('\0', ' ').trim() : ask('ps', ['-o', 'command=', '-p', String(pid)])

/** @param {number} pid */
export function workingFolder(pid) {
  if (!hasProc)
    return (
      ask('lsof', ['-a', '-d', 'cwd', '-p', String(pid), '-Fn'])
        .split('\nn')
        .at(-1) ?? ''
    )
  try {
    return fs.readlinkSync(`/proc/${pid}/cwd`).replace(/ \(deleted\)$/, '')
  } catch {
    return ''
  }
}

/** @param {number} pid @returns {Identity} */
export const identify = (pid) => ({ pid, began: beginning(pid) })

/** Whether that very process still runs. @param {Identity | null} identity */
export const isRunning = (identity) =>
  identity !== null && identity.began !== '' && beginning(identity.pid) === identity.began

/** @param {string} file @returns {Identity | null} */
export function readIdentity(file) {
  try {
    const { pid, began } = JSON.parse(fs.readFileSync(file, 'utf8'))
    return Number.isInteger(pid) && typeof began === 'string' ? { pid, began } : null
  } catch {
    return null
  }
}

/** @param {Identity} identity @param {NodeJS.Signals} signal */
export function signalTo(identity, signal) {
  if (!isRunning(identity)) return
  try {
    process.kill(identity.pid, signal)
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'ESRCH') throw error
  }
}

/**
 * Asks the process to end, waits, and ends it. Returns when it is gone.
 * @param {Identity} identity @param {NodeJS.Signals} gentle @param {number} graceMs @param {NodeJS.Signals} [hard]
 */
export async function stop(identity, gentle, graceMs, hard = 'SIGKILL') {
  signalTo(identity, gentle)
  const until = Date.now() + graceMs
  while (isRunning(identity)) {
    if (Date.now() > until) signalTo(identity, hard)
    await sleep(25)
  }
}

/** Children of this script that a signal must reach. @type {Set<import('node:child_process').ChildProcess>} */
const children = new Set()

let ending = false

/** From now on nothing new is run, and what runs is asked to end. */
export function endChildren() {
  ending = true
  for (const child of children) child.kill('SIGTERM')
}

/**
 * Runs a program to its end. Its words go to `log`, and to the terminal when it fails.
 * @param {string} command @param {string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv, log: string, what: string, show?: boolean }} options `show`: its stderr on ours, too
 * @returns {Promise<string>} what it wrote to stdout
 */
export async function run(command, args, { cwd, env = process.env, log, what, show = false }) {
  if (ending) throw new Refusal(`${what}: not begun, because it was told to stop.`)
  fs.mkdirSync(path.dirname(log), { recursive: true })
  const file = fs.openSync(log, 'w', 0o600)
  try {
    const child = spawn(command, args, { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] })
    children.add(child)
    let out = ''
    child.stdout.on('data', (piece) => {
      out += piece
      fs.writeSync(file, piece)
    })
    child.stderr.on('data', (piece) => {
      fs.writeSync(file, piece)
      if (show) process.stderr.write(piece)
    })
    const code = await new Promise((resolve, reject) => {
      child.on('error', reject)
      child.on('close', (status, signal) => resolve(signal ?? status))
    }).finally(() => children.delete(child))
    if (code !== 0)
      throw new Refusal(`${what} failed (${code}). Its last words, all of them in ${log}:\n${tail(log, 40)}`)
    return out
  } finally {
    fs.closeSync(file)
  }
}

/** The last lines of a file, indented. @param {string} file @param {number} lines */
export const tail = (file, lines) =>
  read(file)
    .trimEnd()
    .split('\n')
    .slice(-lines)
    .map((line) => `    ${line}`)
    .join('\n')
