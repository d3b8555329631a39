import fs from 'node:fs'
import { writeJson } from './lock.mjs'
import { inState } from './paths.mjs'

/** The demo sign-ins as the loader left them. @returns {{ role: string, email: string, note: string }[]} */
export function demoSignIns() {
  const file = inState('demo-sign-ins.json')
  return fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : []
}

const clockFile = () => inState('demo-clock.json')

/** Written every few seconds; a killed launcher loses less than this. */
const marginMs = 20_000

/**
 * The demo's clock stands still while nothing serves, so that its season does not grow old in a drawer.
 * @returns {{ now: string, keep: () => void }} `now`: what time it is in the demo; `keep` remembers it, until called again
 */
export function startDemoClock() {
  const began = Date.now()
  const kept = fs.existsSync(clockFile())
    ? Date.parse(JSON.parse(fs.readFileSync(clockFile(), 'utf8')).now)
    : Number.NaN
  const start = Number.isNaN(kept) ? began : kept
  const keep = () => writeJson(clockFile(), { now: new Date(start + marginMs + (Date.now() - began)).toISOString() })
  keep()
  return { now: new Date(start).toISOString(), keep }
}

export const demoClockEveryMs = marginMs / 2
