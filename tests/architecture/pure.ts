import ts from 'typescript'
import { areaOf } from './check-imports'
import { lineOf, parse, type Source, visit } from './sources'
import type { Area } from './table'

const pureAreas: readonly (Area | null)[] = ['curriculum', 'assessment', 'measure', 'wording', 'reports', 'access']

/** The modules of rules: no clock, no randomness, no waiting, no outside. */
export const isPure = (path: string): boolean => pureAreas.includes(areaOf(path))

/** Members that bring in time or chance, and globals that reach outside. */
const members = ['Date.now', 'Math.random', 'performance.now', 'crypto.randomUUID', 'crypto.getRandomValues']
const globals = ['process', 'fetch', 'setTimeout', 'setInterval', 'queueMicrotask', 'console', 'globalThis']
const browser = ['window', 'document', 'navigator', 'localStorage', 'sessionStorage', 'indexedDB']
const outside = new Set([...globals, ...browser])

/** A name used as a value: not a property, a key, a declaration or a type. */
function isValueUse(node: ts.Identifier): boolean {
  const { parent } = node
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node
  if (ts.isPropertyAssignment(parent) || ts.isBindingElement(parent)) return parent.initializer === node
  return ts.isExpression(parent) || ts.isVariableDeclaration(parent) || ts.isReturnStatement(parent)
}

/** Names that the file gives to things of its own, such as the document that is an edition. */
function ownNames(file: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>()
  visit(file, (node) => {
    const declares = ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)
    if (declares && ts.isIdentifier(node.name)) names.add(node.name.text)
  })
  return names
}

function fault(node: ts.Node, own: ReadonlySet<string>): string | null {
  if (node.kind === ts.SyntaxKind.AsyncKeyword || ts.isAwaitExpression(node)) return 'waits'
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length)
    return 'reads the clock'
  if (ts.isCallExpression(node) && node.expression.getText() === 'Date') return 'reads the clock'
  if (ts.isPropertyAccessExpression(node) && members.includes(node.getText())) return `uses ${node.getText()}`
  if (ts.isIdentifier(node) && outside.has(node.text) && !own.has(node.text) && isValueUse(node))
    return `uses ${node.text}`
  if (ts.isImportDeclaration(node) && node.moduleSpecifier.getText().includes('node:crypto'))
    return node.importClause?.getText() === '{ createHash }' ? null : 'takes more than createHash from node:crypto'
  return null
}

/** What makes a module impure, a line for each. */
export function impurities(source: Source): string[] {
  const file = parse(source)
  const own = ownNames(file)
  const found: string[] = []
  visit(file, (node) => {
    const what = fault(node, own)
    if (what) found.push(`${source.path}:${lineOf(file, node)} ${what}`)
  })
  return found
}

/** Places that read the process environment. */
export function environmentReads(source: Source): string[] {
  const file = parse(source)
  const found: string[] = []
  visit(file, (node) => {
    const reads =
      (ts.isPropertyAccessExpression(node) && /^(globalThis\.)?process$/.test(node.expression.getText())
        ? node.name.text === 'env'
        : false) ||
      (ts.isVariableDeclaration(node) && node.initializer?.getText() === 'process') ||
      (ts.isImportDeclaration(node) && /^['"](node:)?process['"]$/.test(node.moduleSpecifier.getText()))
    if (reads) found.push(`${source.path}:${lineOf(file, node)}`)
  })
  return found
}

/** A type that another export's sentence already says: `z.infer<typeof x>`, `(typeof x)[number]`, `X['kind']`. */
const isDerived = (statement: ts.Statement): boolean =>
  ts.isTypeAliasDeclaration(statement) &&
  /^(z\.infer<typeof \w+>|\(typeof \w+\)\[number\]|\w+\['\w+'\])$/.test(statement.type.getText())

/** Exports of a module that have no sentence before them. */
export function undocumentedExports(source: Source): string[] {
  const file = parse(source)
  return file.statements
    .filter((statement) => ts.canHaveModifiers(statement))
    .filter((statement) => ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword))
    .filter((statement) => !isDerived(statement))
    .filter((statement) => !ts.getJSDocCommentsAndTags(statement).some(ts.isJSDoc))
    .map((statement) => `${source.path}:${lineOf(file, statement)} ${statement.getText().slice(0, 50).split('\n')[0]}`)
}
