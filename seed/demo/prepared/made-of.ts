import fs from 'node:fs'
import path from 'node:path'
import { digestOf, filesBelow } from '../../../scripts/platform/files.mjs'

const root = path.resolve(import.meta.dirname, '../../..')

/** What the demo's rows come from, apart from the write path: the database's shape, and what the seed tells. */
export interface MadeOf {
  /** SHA-256 of each migration, by its name. */
  readonly migrations: Readonly<Record<string, string>>
  /** SHA-256 over the curriculum's files and every file of the seed that the telling imports. */
  readonly seed: string
}

const importOf = /\bfrom '(\.{1,2}\/[^']+)'/g

/** The seed's files that a file of it imports, itself among them. The prepared demo is no part of what is told. */
function importedBy(file: string, found = new Set<string>()): Set<string> {
  const told = file.startsWith('seed/') && !file.startsWith('seed/demo/prepared/')
  if (!told || found.has(file) || !fs.existsSync(path.join(root, file))) return found
  found.add(file)
  for (const [, named = ''] of fs.readFileSync(path.join(root, file), 'utf8').matchAll(importOf))
    importedBy(`${path.posix.join(path.posix.dirname(file), named)}.ts`, found)
  return found
}

/** The files whose change may tell another season. */
export const seedFiles = (): string[] => [...importedBy('seed/run.ts'), ...filesBelow('seed/curriculum')].sort()

/** As the repository is now. */
export function madeOf(): MadeOf {
  const migrations = filesBelow('prisma/migrations').filter((file) => file.endsWith('.sql'))
  return {
    migrations: Object.fromEntries(migrations.map((file) => [path.basename(path.dirname(file)), digestOf([file])])),
    seed: digestOf(seedFiles()),
  }
}

/**
 * Why rows that were made of one do not fit a repository of the other; null when they do. A migration that came later is no
 * reason: rows are loaded by the names of their columns.
 */
export function whyUnfit(made: MadeOf, now: MadeOf): string | null {
  if (made.seed !== now.seed) return 'the seed tells another season since it was written'
  const changed = Object.keys(made.migrations).filter((name) => now.migrations[name] !== made.migrations[name])
  return changed.length > 0 ? `${changed.join(', ')} changed since it was written` : null
}
