import { PrismaPg } from '@prisma/adapter-pg'
import { ColumnTypeEnum } from '@prisma/driver-adapter-utils'
import pg from 'pg'

/** Number of the catalogue's type "char" in pg_type. */
const charType = 18

/**
 * Prisma's adapter with three things put right: it cuts a script at each semicolon, also inside a function's body, and leaves
 * half of a failed one behind; the engine hides PostgreSQL's own words; and it does not know the catalogue's type "char".
 */
export class MigrationAdapter extends PrismaPg {
  readonly #pool: pg.Pool
  /** What PostgreSQL said of the script that failed. */
  failure: string | null = null
  /** With it, what would change the database is noted here and not run. */
  rehearsal: string[] | null = null

  constructor(pool: pg.Pool) {
    super(pool)
    this.#pool = pool
  }

  override async connect() {
    const adapter = await super.connect()
    const charColumns = noteCharColumns(this.#pool)
    const read = adapter.queryRaw.bind(adapter)
    adapter.queryRaw = async (query) => {
      const result = await read(query)
      for (const column of charColumns.get(result.rows) ?? []) result.columnTypes[column] = ColumnTypeEnum.Character
      return result
    }
    const change = adapter.executeRaw.bind(adapter)
    adapter.executeRaw = async (query) => (this.rehearsal ? this.rehearsal.push(query.sql) : change(query))
    adapter.executeScript = async (script) => {
      if (this.rehearsal) return void this.rehearsal.push(script)
      // One simple query is one implicit transaction: all of the file or nothing.
      await this.#pool.query(script).catch((error: unknown) => {
        this.failure = inItsWords(error, script)
        throw error
      })
    }
    return adapter
  }
}

/** Passes such columns off as text to the adapter, and remembers them by the rows they came with. */
function noteCharColumns(pool: pg.Pool): WeakMap<object, number[]> {
  const noted = new WeakMap<object, number[]>()
  const ask: (query: pg.QueryConfig) => Promise<pg.QueryResult> = pool.query.bind(pool)
  const query = async (config: pg.QueryConfig): Promise<pg.QueryResult> => {
    const result = await ask(config)
    const fields = result.fields ?? []
    const columns = fields.flatMap((field, column) => (field.dataTypeID === charType ? [column] : []))
    for (const column of columns) Object.assign(fields[column] ?? {}, { dataTypeID: pg.types.builtins.TEXT })
    if (columns.length > 0) noted.set(result.rows, columns)
    return result
  }
  Object.assign(pool, { query })
  return noted
}

/** PostgreSQL's message, with the line of the script where it names one. */
function inItsWords(error: unknown, script: string): string {
  if (!(error instanceof pg.DatabaseError)) return String(error)
  const line = error.position ? ` (line ${script.slice(0, Number(error.position)).split('\n').length})` : ''
  return `${error.message}${line}${error.detail ? `: ${error.detail}` : ''}`
}
