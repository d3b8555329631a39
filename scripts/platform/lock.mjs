import fs from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import { inState, stateFolder } from './paths.mjs'
import { identify, isRunning, readIdentity } from './processes.mjs'
import { say } from './progress.mjs'

/** Makes the state folder: others may pass through (the database's own user), not look around. */
export function makeStateFolder() {
  fs.mkdirSync(stateFolder, { recursive: true, mode: 0o711 })
}

/** Writes all of it or nothing. @param {string} file @param {unknown} value @param {number} [mode] */
export function writeJson(file, value, mode = 0o600) {
  const draft = `${file}.${process.pid}`
  fs.writeFileSync(draft, `${JSON.stringify(value, null, 2)}\n`, { mode })
  fs.renameSync(draft, file)
}

/** @param {string} file @returns {boolean} whether it was not there before */
function create(file) {
  const draft = `${file}.${process.pid}`
  fs.writeFileSync(draft, JSON.stringify(identify(process.pid)), { mode: 0o600 })
  try {
    // A link appears with its content at once, and only for the first who asks.
    fs.linkSync(draft, file)
    return true
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false
    throw error
  } finally {
    fs.rmSync(draft, { force: true })
  }
}

/** Removes what a killed process left; one remover at a time, who looks again. @param {string} file */
function clear(file) {
  const remover = `${file}.clearing`
  if (!create(remover)) {
    const since = fs.statSync(remover, { throwIfNoEntry: false })?.mtimeMs ?? Date.now()
    if (Date.now() - since > 5_000) fs.rmSync(remover, { force: true })
    return
  }
  if (!isRunning(readIdentity(file))) fs.rmSync(file, { force: true })
  fs.rmSync(remover, { force: true })
}

/** @param {string} file @returns {boolean} whether this process now holds it; if not, try again or give up */
export function claim(file) {
  if (create(file)) return true
  if (!isRunning(readIdentity(file))) clear(file)
  return false
}

/** @param {string} file */
export function release(file) {
  if (readIdentity(file)?.pid === process.pid) fs.rmSync(file, { force: true })
}

/**
 * One process of this installation at a time; the others wait.
 * @template T
 * @param {string} name @param {() => Promise<T>} work
 */
export async function withLock(name, work) {
  makeStateFolder()
  const file = inState(`${name}.lock`)
  for (let tries = 0; !claim(file); tries++) {
    if (tries % 100 === 10)
      say(`waiting for process ${readIdentity(file)?.pid ?? '?'}, which is at the same work (${name})`)
    await sleep(100)
  }
  try {
    return await work()
  } finally {
    release(file)
  }
}
