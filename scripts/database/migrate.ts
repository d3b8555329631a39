import fs from 'node:fs'
import path from 'node:path'
import { PrismaPg } from '@prisma/adapter-pg'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'
import type { MigrationList, SchemaEngine } from '@prisma/schema-engine-wasm'
import pg from 'pg'
import { loadEngine } from './engine'

/**
 * Applies migrations with Prisma's own engine, compiled to WebAssembly, so that nothing is downloaded; its
 * `_prisma_migrations` table is the one that `prisma migrate deploy` keeps.
 */

/** Prisma's adapter cuts a script at each semicolon, also inside a function's body, and leaves half of a failed one. */
class WholeScript extends PrismaPg {
  readonly #pool: pg.Pool

  constructor(pool: pg.Pool) {
    super(pool)
    this.#pool = pool
  }

  override async connect() {
    const adapter = await super.connect()
    // One simple query is one implicit transaction: all of the file or nothing.
    adapter.executeScript = async (script) => {
      await this.#pool.query(script)
    }
    return adapter
  }
}

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
  work: (engine: SchemaEngine, schema: { path: string; content: string }) => Promise<T>,
): Promise<T> {
  const schema = path.join(prismaFolder, 'schema.prisma')
  const content = fs.readFileSync(schema, 'utf8')
  const pool = new pg.Pool({ connectionString: ownerUrl, max: 2 })
  try {
    const factory = bindMigrationAwareSqlAdapterFactory(new WholeScript(pool))
    const engine = await (await loadEngine()).new({ datamodels: [[schema, content]] }, () => undefined, factory)
    return await work(engine, { path: schema, content })
  } finally {
    await pool.end()
  }
}

/**
 * Brings the database up to date; answers the names of the migrations that were missing. One that failed left nothing
 * behind and is tried again. Throws Error for a migration that was edited after it was applied, and with PostgreSQL's own words.
 */
export const migrate = (ownerUrl: string, prismaFolder: string): Promise<string[]> =>
  withEngine(ownerUrl, prismaFolder, async (engine) => {
    const migrationsList = readMigrations(prismaFolder)
    const history = await engine.diagnoseMigrationHistory({
      migrationsList,
      optInToShadowDatabase: false,
      filters: everything,
    })
    if (history.editedMigrationNames.length > 0)
      throw new Error(
        `The database has other versions of ${history.editedMigrationNames.join(', ')}: a migration is never edited after it was applied; write a new one.`,
      )
    for (const migrationName of history.failedMigrationNames) await engine.markMigrationRolledBack({ migrationName })
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters: everything })
    return appliedMigrationNames
  })

/** The SQL that would bring the migrated database to the schema; empty when they agree on all that the schema can say. */
export const driftFromSchema = (ownerUrl: string, prismaFolder: string): Promise<number> =>
  withEngine(ownerUrl, prismaFolder, async (engine, schema) => {
    const { executedSteps, warnings, unexecutable } = await engine.schemaPush({
      force: false,
      schema: { files: [schema] },
      filters: everything,
    })
    return executedSteps + warnings.length + unexecutable.length
  })
