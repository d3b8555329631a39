import fs from 'node:fs'
import { writeJson } from './lock.mjs'
import { inState, stateFolder } from './paths.mjs'

/** The demo sign-ins as the loader left them. @returns {{ role: string, email: string, note: string }[]} */
export function demoSignIns() {
  const file = inState('demo-sign-ins.json')
  return fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : []
}

const everyMs = 10_000

/** @param {string} folder */
const note = (folder) => `${folder}/last-used.json`
/** @param {string} folder */
const touch = (folder) => writeJson(note(folder), { at: Date.now() })

/**
 * How long nobody has used the folder's database, in milliseconds; ends that idle time. A killed user loses less than the margin.
 * @param {string} folder
 */
export function demoIdleMs(folder) {
  const last = fs.existsSync(note(folder)) ? Number(JSON.parse(fs.readFileSync(note(folder), 'utf8')).at) : Date.now()
  touch(folder)
  return Math.max(0, Date.now() - last - 2 * everyMs)
}

/** While it serves, the demo's time goes on. */
export function keepDemoClock() {
  setInterval(() => touch(stateFolder), everyMs).unref()
}
