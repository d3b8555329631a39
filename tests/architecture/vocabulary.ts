import ts from 'typescript'
import { parse, type Source } from './sources'

const forbidden = ['utils', 'util', 'helpers', 'helper', 'misc', 'common', 'shared', 'stuff']
const roots = ['.ci', 'app', 'docs', 'lib', 'prisma', 'public', 'scripts', 'seed', 'sw', 'tests']

/** Names that tools insist on. */
const givenNames = [
  /^(README|DEVELOPERS|LICENSE)\.md$/,
  /^\.gitignore$|^\.gitattributes$|^\.nvmrc$|^\.npmrc$/,
  /^migration_lock\.toml$/,
  /^\d{4}_[a-z0-9_]+$/,
]
const kebab = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9-]+)*$/
/** Next's own marks: [parameter], (group), _private. */
const segment = /^(_[a-z]+|\[(\.\.\.)?[a-z][a-zA-Z0-9]*\]|\([a-z-]+\))$/

const stem = (name: string): string => name.replace(/\.[^.]+$/, '')

function faultOfName(name: string, inApp: boolean): string | null {
  if (
    stem(name)
      .split(/[-.]/)
      .some((word) => forbidden.includes(word))
  )
    return 'says nothing'
  if (givenNames.some((given) => given.test(name)) || kebab.test(name)) return null
  return inApp && segment.test(name) ? null : 'is not in kebab-case'
}

/** What a segment of pages may hold besides folders. The deck is a client of its own, and `api` answers with data. */
const segmentFiles =
  /^((page|layout|loading|error|not-found|global-error)\.tsx|(loader|actions|route|manifest)\.ts|[a-z-]+\.css|icon\.svg)$/
const isSegment = (folders: readonly string[]): boolean =>
  folders[0] === 'app' && folders[1] !== 'api' && folders[1] !== 'deck' && !folders.some((name) => name.startsWith('_'))

/** What is wrong with a path: its names, or its place. */
export function faultsOfPath(path: string): string[] {
  const parts = path.split('/')
  const folders = parts.slice(0, -1)
  const file = parts.at(-1) ?? ''
  const faults = parts.flatMap((name) => {
    const fault = name === '.ci' ? null : faultOfName(name, parts[0] === 'app')
    return fault ? [`${path}: "${name}" ${fault}`] : []
  })
  const [top] = folders
  if (top !== undefined && !roots.includes(top)) faults.push(`${path}: there is no place "${top}" in the layout`)
  if (isSegment(folders) && !segmentFiles.test(file) && !/\.test\.tsx?$/.test(file))
    faults.push(`${path}: a segment holds pages, loader.ts, actions.ts, its style sheet and _components/`)
  return faults
}

/** Whether a source only hands on what others export. */
export function isBarrel(source: Source): boolean {
  const { statements } = parse(source)
  const handsOn = (statement: ts.Statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier
  return /(^|\/)index\.(ts|tsx|mjs)$/.test(source.path) || (statements.length > 0 && statements.every(handsOn))
}
