import fs from 'node:fs'
import path from 'node:path'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'
import type { MigrationList, SchemaEngine } from '@prisma/schema-engine-wasm'
import pg from 'pg'
import { loadEngine } from './engine'
import { MigrationAdapter } from './migration-adapter'

/**
 * Applies migrations with Prisma's own engine, compiled to WebAssembly, so that nothing is downloaded; its
 * `_prisma_migrations` table is the one that `prisma migrate deploy` keeps.
 */

const everything = { externalTables: [], externalEnums: [] }

function readMigrations(prismaFolder: string): MigrationList {
  const baseDir = path.join(prismaFolder, 'migrations')
  const lockfile = path.join(baseDir, 'migration_lock.toml')
  return {
    baseDir,
    lockfile: {
      path: 'migration_lock.toml',
      content: fs.existsSync(lockfile) ? fs.readFileSync(lockfile, 'utf8') : null,
    },
    shadowDbInitScript: '',
    migrationDirectories: fs
      .readdirSync(baseDir, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
      .sort()
      .map((name) => ({
        path: name,
        migrationFile: {
          path: 'migration.sql',
          content: { tag: 'ok', value: fs.readFileSync(path.join(baseDir, name, 'migration.sql'), 'utf8') },
        },
      })),
  }
}

async function withEngine<T>(
  ownerUrl: string,
  prismaFolder: string,
  work: (engine: SchemaEngine, schema: { path: string; content: string }, adapter: MigrationAdapter) => Promise<T>,
): Promise<T> {
  const schema = path.join(prismaFolder, 'schema.prisma')
  const content = fs.readFileSync(schema, 'utf8')
  const pool = new pg.Pool({ connectionString: ownerUrl, max: 2 })
  try {
    const adapter = new MigrationAdapter(pool)
    const factory = bindMigrationAwareSqlAdapterFactory(adapter)
    const engine = await (await loadEngine()).new({ datamodels: [[schema, content]] }, () => undefined, factory)
    return await work(engine, { path: schema, content }, adapter)
  } finally {
    await pool.end()
  }
}

/**
 * Brings the database up to date; answers the names of the migrations that were missing. One that failed left nothing
 * behind and is tried again. Throws Error for a migration that was edited after it was applied, and with PostgreSQL's own words.
 */
export const migrate = (ownerUrl: string, prismaFolder: string): Promise<string[]> =>
  withEngine(ownerUrl, prismaFolder, async (engine, _schema, adapter) => {
    const migrationsList = readMigrations(prismaFolder)
    const input = { migrationsList, optInToShadowDatabase: false, filters: everything }
    const history = await engine.diagnoseMigrationHistory(input)
    const edited = history.editedMigrationNames.filter((name) => !history.failedMigrationNames.includes(name))
    if (edited.length > 0)
      throw new Error(
        `The database has other versions of ${edited.join(', ')}: a migration is never edited after it was applied; write a new one.`,
      )
    for (const migrationName of history.failedMigrationNames) await engine.markMigrationRolledBack({ migrationName })
    try {
      return (await engine.applyMigrations({ migrationsList, filters: everything })).appliedMigrationNames
    } catch (error) {
      if (adapter.failure === null) throw error
      const after = await engine.diagnoseMigrationHistory(input)
      throw new Error(
        `Migration ${after.failedMigrationNames.join()} failed and left nothing behind: ${adapter.failure}`,
      )
    }
  })

/** The statements that would still bring the migrated database to the schema: none when they agree on all that the schema can say. */
export const driftFromSchema = (ownerUrl: string, prismaFolder: string): Promise<string[]> =>
  withEngine(ownerUrl, prismaFolder, async (engine, schema, adapter) => {
    adapter.rehearsal = []
    const { warnings, unexecutable } = await engine.schemaPush({
      force: true,
      schema: { files: [schema] },
      filters: everything,
    })
    return [...adapter.rehearsal, ...warnings, ...unexecutable]
  })
