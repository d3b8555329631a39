import path from 'node:path'
import { migrate } from './migrate'
import { closeToOthers, inTurn, lookInto, makeAppRole, makeOwnDatabase, requirePowerless } from './roles'

/**
 * Roles, database and migrations, for the launcher: addresses come in the environment, the outcome goes to stdout as JSON.
 * With PLUMBLINE_ADMIN_URL the cluster is our own; `--anew` then drops the database first.
 */
async function prepare(): Promise<void> {
  const { DATABASE_URL: owner, DATABASE_APP_URL: app, PLUMBLINE_ADMIN_URL: admin } = process.env
  if (!owner || !app) throw new Error('DATABASE_URL and DATABASE_APP_URL must be set.')
  if (admin) await makeOwnDatabase(admin, owner, app, process.argv.includes('--anew'))
  else await makeAppRole(owner, app)
  const applied = await inTurn(owner, () => migrate(owner, path.resolve(import.meta.dirname, '../../prisma')))
  if (admin) await closeToOthers(owner)
  await requirePowerless(app)
  process.stdout.write(JSON.stringify({ applied, ...(await lookInto(owner)) }))
}

prepare().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
  process.exitCode = 1
})
