import fs from 'node:fs'
import path from 'node:path'
import ts from 'typescript'

/** One file of the repository: its path from the root, with forward slashes, and its text. */
export interface Source {
  readonly path: string
  readonly text: string
}

const root = path.resolve(import.meta.dirname, '../..')
const notOurs = new Set(['node_modules', 'generated', 'test-results', 'playwright-report', '.git', '.plumbline'])

function walk(folder: string): string[] {
  return fs.readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const name = path.posix.join(folder, entry.name)
    if (notOurs.has(entry.name) || entry.name.startsWith('.next')) return []
    return entry.isDirectory() ? walk(name) : [name]
  })
}

/** Paths of all files of the repository, without what is installed, generated or built. */
export const listPaths = (): string[] => walk('').sort()

/** All TypeScript and JavaScript, with its text. */
export const listSources = (): Source[] =>
  listPaths()
    .filter((name) => /\.(ts|tsx|mts|mjs)$/.test(name) && name !== 'next-env.d.ts')
    .map((name) => ({ path: name, text: fs.readFileSync(path.join(root, name), 'utf8') }))

export const readText = (name: string): string => fs.readFileSync(path.join(root, name), 'utf8')

/** The syntax tree of a source. */
export function parse({ path: name, text }: Source): ts.SourceFile {
  const kind = name.endsWith('.tsx') ? ts.ScriptKind.TSX : name.endsWith('.mjs') ? ts.ScriptKind.JS : ts.ScriptKind.TS
  return ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true, kind)
}

/** Visits every node below. */
export function visit(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node)
  ts.forEachChild(node, (child) => visit(child, see))
}

export const lineOf = (file: ts.SourceFile, node: ts.Node): number =>
  file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1
