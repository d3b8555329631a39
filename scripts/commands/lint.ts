import { existsSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { lint as lintDocument } from '../../lib/curriculum/lint/lint'
import type { LintCode } from '../../lib/curriculum/lint/problem'
import { readCurriculum } from '../../seed/read-curriculum'
import type { Sink } from './dive'

export const help = `Usage: plumbline lint PATH [--json]

Reads a curriculum and names what is wrong with it, each as file:line: message.

  PATH     a folder of YAML files (programme.yaml, skills/, criteria/, faults/) or one JSON file with a whole edition
  --json   one array; each element has file, line, code and message, and is empty when nothing is wrong

Exits with 0 when nothing is wrong, with 1 when something is, with 2 when the command is not used as above.
`

/** `reading`: the file or its shape is not that of a curriculum; the others are the linter's own. */
interface Found {
  readonly file: string
  readonly line: number
  readonly code: LintCode | 'reading'
  readonly message: string
}

function found(place: string, code: Found['code'], message: string): Found {
  const colon = place.lastIndexOf(':')
  return { file: place.slice(0, colon), line: Number(place.slice(colon + 1)), code, message }
}

interface Answer {
  readonly problems: readonly Found[]
  /** What was read, in one line. */
  readonly summary: string
}

function answer(path: string): Answer {
  const { document, problems, placeOf } = readCurriculum(path)
  if (document === null)
    return { problems: problems.map(({ place, message }) => found(place, 'reading', message)), summary: '' }
  const pairs = document.skills.reduce((sum, skill) => sum + skill.places.length, 0)
  return {
    problems: lintDocument(document).map(({ code, path: at, message }) => found(placeOf(at), code, message)),
    summary: `${document.title}: ${document.skills.length} skills at ${pairs} places, ${document.criteria.length} criteria, ${document.faults.length} faults, nothing wrong`,
  }
}

interface Usage {
  readonly path: string
  readonly json: boolean
  readonly help: boolean
}

/** Throws an Error whose message says how the arguments are wrong. */
function readArguments(args: string[]): Usage {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { json: { type: 'boolean', default: false }, help: { type: 'boolean', short: 'h', default: false } },
  })
  const [path, ...more] = positionals
  if (values.help) return { path: '', ...values }
  if (path === undefined) throw new Error('give the folder or the JSON file of a curriculum, such as seed/curriculum')
  if (more.length > 0) throw new Error(`give one path, not ${positionals.length}`)
  if (!existsSync(path)) throw new Error(`there is no file or folder ${path}`)
  return { path, ...values }
}

/** `plumbline lint`: writes what is wrong on `out`, how the command is used on `err`; answers the exit code. */
export async function lint(args: string[], out: Sink, err: Sink): Promise<number> {
  let usage: Usage
  try {
    usage = readArguments(args)
  } catch (error) {
    err.write(`plumbline lint: ${error instanceof Error ? error.message : error}\n\n${help}`)
    return 2
  }
  if (usage.help) {
    out.write(help)
    return 0
  }
  const { problems, summary } = answer(usage.path)
  if (usage.json) out.write(`${JSON.stringify(problems, null, 2)}\n`)
  else if (problems.length === 0) out.write(`${summary}\n`)
  else for (const { file, line, message } of problems) out.write(`${file}:${line}: ${message}\n`)
  return problems.length > 0 ? 1 : 0
}

export const run = (args: string[]): Promise<number> => lint(args, process.stdout, process.stderr)
