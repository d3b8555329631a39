import path from 'node:path'
import ts from 'typescript'
import { lineOf, parse, type Source, visit } from './sources'

/** One import, re-export or `import()` as written. */
export interface Import {
  readonly from: string
  readonly line: number
  readonly specifier: string
  /** Path of the file in the repository; null for a package. */
  readonly file: string | null
  /** It disappears when compiled. */
  readonly typeOnly: boolean
}

const extensions = ['', '.ts', '.tsx', '.mts', '.mjs', '/index.ts', '/index.tsx']

/** Where a specifier leads. One that leads to no known file keeps its path, so that rules on folders still hold. */
function resolve(from: string, specifier: string, known: ReadonlySet<string>): string | null {
  const bare = specifier.startsWith('@/')
    ? specifier.slice(2)
    : specifier.startsWith('.')
      ? path.posix.join(path.posix.dirname(from), specifier)
      : null
  if (bare === null) return null
  const found = extensions.map((extension) => bare + extension).find((name) => known.has(name))
  return found ?? (path.posix.extname(bare) ? bare : `${bare}.ts`)
}

const isTypeOnly = (clause: ts.ImportClause | undefined): boolean => {
  if (!clause) return false
  if (clause.isTypeOnly) return true
  const named = clause.namedBindings
  if (clause.name || !named || !ts.isNamedImports(named)) return false
  return named.elements.length > 0 && named.elements.every((element) => element.isTypeOnly)
}

/** Every import of one source. */
export function importsOf(source: Source, known: ReadonlySet<string>): Import[] {
  const file = parse(source)
  const found: Import[] = []
  const add = (node: ts.Node, to: ts.Node | undefined, typeOnly: boolean) => {
    if (!to || !ts.isStringLiteralLike(to)) return
    const [from, specifier] = [source.path, to.text]
    found.push({ from, line: lineOf(file, node), specifier, file: resolve(from, specifier, known), typeOnly })
  }
  visit(file, (node) => {
    if (ts.isImportDeclaration(node)) add(node, node.moduleSpecifier, isTypeOnly(node.importClause))
    else if (ts.isExportDeclaration(node)) add(node, node.moduleSpecifier, node.isTypeOnly)
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node, node.arguments[0], false)
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node, node.argument.literal, true)
  })
  return found
}

/** Every import of the sources. */
export function listImports(sources: readonly Source[]): Import[] {
  const known = new Set(sources.map((source) => source.path))
  return sources.flatMap((source) => importsOf(source, known))
}
