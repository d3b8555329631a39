import path from 'node:path'
import { holdDemoClock, lookInto } from './contents'
import { migrate } from './migrate'
import { closeToOthers, inTurn, makeAppRole, makeOwnDatabase, requirePowerless } from './roles'

/**
 * Roles, database and migrations, for the launcher: addresses come in the environment, the outcome goes to stdout as JSON.
 * With PLUMBLINE_ADMIN_URL the cluster is our own; `--anew` then drops the database first.
 * `--idle=MS`: how long nobody used it.
 */
async function prepare(): Promise<void> {
  const { DATABASE_URL: owner, DATABASE_APP_URL: app, PLUMBLINE_ADMIN_URL: admin } = process.env
  if (!owner || !app) throw new Error('DATABASE_URL and DATABASE_APP_URL must be set.')
  if (admin) await makeOwnDatabase(admin, owner, app, process.argv.includes('--anew'))
  else await makeAppRole(owner, app)
  const applied = await inTurn(owner, () => migrate(owner, path.resolve(import.meta.dirname, '../../prisma')))
  if (admin) await closeToOthers(owner)
  await requirePowerless(app)
  const idle = Number(process.argv.find((flag) => flag.startsWith('--idle='))?.slice('--idle='.length) ?? 0)
  if (idle > 0) await holdDemoClock(owner, idle)
  process.stdout.write(JSON.stringify({ applied, ...(await lookInto(owner)) }))
}

try {
  await prepare()
  // The engine's timer for its lock runs on for ten seconds after the lock was had.
  process.exit(0)
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
  process.exit(1)
}
