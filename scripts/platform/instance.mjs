import fs from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import { claim, release, writeJson } from './lock.mjs'
import { inRoot, inState } from './paths.mjs'
import { readIdentity } from './processes.mjs'
import { say, step } from './progress.mjs'
import { isOurWeb, stopWeb } from './web.mjs'

/** One `npm start` per installation: its lock, and a note of the web server that it runs. */

const lock = () => inState('start.lock')
const note = () => inState('web.json')

/** The address that the start which holds the lock has noted; null when none runs. */
export function runningAddress() {
  try {
    const { url, by } = JSON.parse(fs.readFileSync(note(), 'utf8'))
    return by === readIdentity(lock())?.pid ? String(url) : null
  } catch {
    return null
  }
}

/** Becomes the one instance, or answers the address of the one there is, waiting while that is still starting. */
export async function becomeInstance() {
  for (let tries = 0; !claim(lock()); tries++) {
    const url = runningAddress()
    if (url) return url
    if (tries % 100 === 5)
      say(`another npm start (process ${readIdentity(lock())?.pid ?? '?'}) is at work: waiting for its address`)
    await sleep(100)
  }
  return null
}

export function endInstance() {
  fs.rmSync(note(), { force: true })
  release(lock())
}

/** @param {import('./processes.mjs').Identity} server @param {string} url */
export const noteWeb = (server, url) => writeJson(note(), { ...server, url, by: process.pid })

/** A start that was killed left its web server behind. */
export async function stopOrphanedWeb() {
  const orphan = readIdentity(note())
  if (orphan && isOurWeb(orphan, inRoot('.next/standalone')))
    await step('stop the web server of a start that was killed', () => stopWeb(orphan))
  fs.rmSync(note(), { force: true })
}
