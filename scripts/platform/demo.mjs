import fs from 'node:fs'
import { writeJson } from './lock.mjs'
import { inState } from './paths.mjs'

/** The demo sign-ins as the loader left them. @returns {{ role: string, email: string, note: string }[]} */
export function demoSignIns() {
  const file = inState('demo-sign-ins.json')
  return fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : []
}

const note = () => inState('last-used.json')
const everyMs = 10_000

const touch = () => writeJson(note(), { at: Date.now() })

/** How long nobody has used the database, in milliseconds; ends that idle time. A killed user loses less than the margin. */
export function demoIdleMs() {
  const last = fs.existsSync(note()) ? Number(JSON.parse(fs.readFileSync(note(), 'utf8')).at) : Date.now()
  touch()
  return Math.max(0, Date.now() - last - 2 * everyMs)
}

/** While it serves, the demo's time goes on. */
export function keepDemoClock() {
  setInterval(touch, everyMs).unref()
}
