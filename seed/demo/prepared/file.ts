import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { brotliCompressSync, brotliDecompressSync, constants } from 'node:zlib'
import { z } from 'zod'
import { type MadeOf, madeOf, whyUnfit } from './made-of'

/** A row as PostgreSQL writes it as JSON: instants in UTC, whole numbers, text, lists. */
export type Row = Readonly<Record<string, unknown>>
/** Rows by table. */
export type Rows = ReadonlyMap<string, readonly Row[]>

/** What is kept of a table: its columns' names, and the values column by column, which is a third smaller than row by row. */
const tableShape = z.object({ columns: z.array(z.string()), values: z.array(z.array(z.unknown())) })
const rowsShape = z.record(z.string(), tableShape)

const format = 1
const aboutShape = z.object({
  format: z.literal(format),
  /** SHA-256 of the file of rows. */
  file: z.string(),
  seed: z.string(),
  migrations: z.record(z.string(), z.string()),
  /** How many rows a table has, for who reads a change of this file. */
  rows: z.record(z.string(), z.number()),
})

/** Where the prepared demo is kept in git. */
export const preparedFolder = import.meta.dirname
const aboutFile = 'about.json'
const rowsFile = 'rows.json.br'

/** How the prepared demo is written again, as it is said wherever it does not fit. */
export const writeAgain = 'npm run plumbline -- demo --write'

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

function toColumns(rows: readonly Row[]): z.infer<typeof tableShape> {
  const columns = Object.keys(rows[0] ?? {})
  return { columns, values: columns.map((column) => rows.map((row) => row[column])) }
}

function toRows({ columns, values }: z.infer<typeof tableShape>): Row[] {
  const [first = []] = values
  return first.map((_, index) => Object.fromEntries(columns.map((column, at) => [column, values[at]?.[index]])))
}

/** Writes the rows and what they were made of; answers the size of the file of rows in bytes. */
export function writePrepared(rows: Rows, made: MadeOf, folder = preparedFolder): number {
  const filled = [...rows].filter(([, list]) => list.length > 0)
  const text = JSON.stringify(Object.fromEntries(filled.map(([table, list]) => [table, toColumns(list)])))
  const params = {
    [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
    [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
    [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
    [constants.BROTLI_PARAM_SIZE_HINT]: text.length,
  }
  const bytes = brotliCompressSync(text, { params })
  const counts = Object.fromEntries(filled.map(([table, list]) => [table, list.length]))
  const about = { format, file: sha256(bytes), seed: made.seed, migrations: made.migrations, rows: counts }
  fs.writeFileSync(path.join(folder, rowsFile), bytes)
  fs.writeFileSync(path.join(folder, aboutFile), `${JSON.stringify(about, null, 2)}\n`)
  return bytes.length
}

/** The prepared demo, or in words why it cannot be used. */
export type Prepared = { readonly ok: true; readonly rows: Rows } | { readonly ok: false; readonly why: string }

const unusable = (why: string): Prepared => ({ ok: false, why })

function readAbout(folder: string): z.infer<typeof aboutShape> | string {
  const file = path.join(folder, aboutFile)
  if (!fs.existsSync(file) || !fs.existsSync(path.join(folder, rowsFile))) return `there is none in ${folder}`
  try {
    return aboutShape.parse(JSON.parse(fs.readFileSync(file, 'utf8')))
  } catch {
    return `${file} cannot be read, or is of another version`
  }
}

/** Reads the prepared demo if it is whole and fits the repository as it is. Never throws for what stands in the files. */
export function readPrepared(folder = preparedFolder, now: MadeOf = madeOf()): Prepared {
  const about = readAbout(folder)
  if (typeof about === 'string') return unusable(about)
  const bytes = fs.readFileSync(path.join(folder, rowsFile))
  if (sha256(bytes) !== about.file) return unusable(`${path.join(folder, rowsFile)} is damaged`)
  const unfit = whyUnfit(about, now)
  if (unfit) return unusable(unfit)
  try {
    const tables = rowsShape.parse(JSON.parse(brotliDecompressSync(bytes).toString('utf8')))
    return { ok: true, rows: new Map(Object.entries(tables).map(([name, table]) => [name, toRows(table)])) }
  } catch {
    return unusable(`${path.join(folder, rowsFile)} does not hold tables`)
  }
}
