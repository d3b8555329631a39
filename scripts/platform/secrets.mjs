import { randomBytes, randomInt } from 'node:crypto'
import fs from 'node:fs'
import { makeStateFolder } from './lock.mjs'
import { inState } from './paths.mjs'
import { Refusal } from './progress.mjs'

/**
 * @typedef {object} Secrets
 * @property {string} superuserPassword of the embedded database's own superuser, which only makes roles and databases
 * @property {string} ownerPassword of `app_owner`, who migrates
 * @property {string} appPassword of `app_user`, as whom the web process works
 * @property {string} sessionSecret signs sessions
 * @property {string} actionsKey names server actions alike in each build, so that an open page survives an update
 * @property {string} demoPassword of the demo sign-ins
 */

// No letters or digits that are read for one another.
const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
const password = () =>
  Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join('')).join(
    '-',
  )

const remedy = 'Put a backup of it back, or move the whole folder away to begin anew.'

/** @returns {Secrets} */
export const freshSecrets = () => ({
  superuserPassword: randomBytes(24).toString('base64url'),
  ownerPassword: randomBytes(24).toString('base64url'),
  appPassword: randomBytes(24).toString('base64url'),
  sessionSecret: randomBytes(32).toString('base64url'),
  actionsKey: randomBytes(32).toString('base64'),
  demoPassword: password(),
})

/** The secrets of this installation, made on the first call and kept, readable by their owner alone. @returns {Secrets} */
export function getSecrets() {
  makeStateFolder()
  const file = inState('secrets.json')
  const draft = `${file}.${process.pid}`
  if (!fs.existsSync(file)) {
    if (fs.existsSync(inState('pg')))
      throw new Refusal(`${file} is gone, and ${inState('pg')} cannot be opened without it. ${remedy}`)
    fs.writeFileSync(draft, `${JSON.stringify(freshSecrets(), null, 2)}\n`, { mode: 0o600, flag: 'wx' })
    try {
      // Of two first starts at once, one makes the secrets and both use them.
      fs.linkSync(draft, file)
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error
    } finally {
      fs.rmSync(draft, { force: true })
    }
  }
  if (fs.statSync(file).mode & 0o077) fs.chmodSync(file, 0o600)
  /** @type {Record<string, unknown>} */
  const kept = parse(file)
  const missing = Object.keys(freshSecrets()).filter((name) => typeof kept[name] !== 'string')
  if (missing.length > 0) throw new Refusal(`${file} lacks ${missing.join(', ')}. ${remedy}`)
  return /** @type {Secrets} */ (/** @type {unknown} */ (kept))
}

/** @param {string} file */
function parse(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'))
  } catch {
    throw new Refusal(`${file} cannot be read as JSON. ${remedy}`)
  }
}
