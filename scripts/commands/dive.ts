import { parseArgs } from 'node:util'
import type { SpringboardHeight } from '../../lib/curriculum/dives/components'
import { difficultyTenths, formatTenths } from '../../lib/curriculum/dives/difficulty'
import { facetsOf } from '../../lib/curriculum/dives/facets'
import type { DiveFacets } from '../../lib/curriculum/dives/model'
import { spokenName } from '../../lib/curriculum/dives/name'
import { parseDive } from '../../lib/curriculum/dives/parse'
import { toTable } from './to-table'

export const help = `Usage: plumbline dive NUMBER… [--height 1|3] [--json]

Says what dive numbers mean: the name, the difficulty at a springboard height, and what follows from the number.

  NUMBER        as the World Aquatics rules write it, e.g. 401B, 105c, "5231 D"
  --height 1|3  height of the springboard in metres (1 when it is not given)
  --json        one array in the order given; each element has dive, name, height, difficulty and facets,
                or, when the number is refused, dive as it was given and error

Exits with 1 when any number is refused, and says why on stderr; with 2 when the command is not used as above.
`

/** Where a command writes; process.stdout and process.stderr are such. */
export interface Sink {
  write(text: string): unknown
}

interface Described {
  readonly dive: string
  readonly name: string
  readonly height: SpringboardHeight
  readonly difficulty: number
  readonly facets: DiveFacets
}
interface Refused {
  readonly dive: string
  readonly error: string
}

function answer(text: string, height: SpringboardHeight): Described | Refused {
  const parsed = parseDive(text)
  if (!parsed.ok) return { dive: text, error: parsed.error.message }
  const difficulty = difficultyTenths(parsed.dive, height)
  if (!difficulty.ok) return { dive: text, error: difficulty.error.message }
  return {
    dive: parsed.dive.canonical,
    name: spokenName(parsed.dive),
    height,
    difficulty: difficulty.tenths / 10,
    facets: facetsOf(parsed.dive),
  }
}

function row({ dive, name, height, difficulty, facets }: Described): string[] {
  const tenths = Math.round(difficulty * 10)
  return [
    dive,
    name,
    `${height} m`,
    formatTenths(tenths),
    facets.facing ?? '',
    facets.sense,
    facets.enters,
    facets.entrySide,
  ]
}

const headings = ['Dive', 'Name', 'Height', 'Difficulty', 'Faces', 'Turns', 'Enters', 'Entry side']

interface Usage {
  readonly numbers: readonly string[]
  readonly height: SpringboardHeight
  readonly json: boolean
  readonly help: boolean
}

/** Throws an Error whose message says how the arguments are wrong. */
function readArguments(args: string[]): Usage {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      height: { type: 'string', default: '1' },
      json: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  })
  if (values.height !== '1' && values.height !== '3')
    throw new Error(`--height is 1 or 3, the height of a springboard in metres; it is not ${values.height}`)
  if (positionals.length === 0 && !values.help) throw new Error('give at least one dive number, such as 103B')
  return { numbers: positionals, height: values.height === '1' ? 1 : 3, json: values.json, help: values.help }
}

/** `plumbline dive`: describes the numbers on `out`, refusals on `err`; answers the exit code. */
export async function dive(args: string[], out: Sink, err: Sink): Promise<number> {
  let usage: Usage
  try {
    usage = readArguments(args)
  } catch (error) {
    err.write(`plumbline dive: ${error instanceof Error ? error.message : error}\n\n${help}`)
    return 2
  }
  if (usage.help) {
    out.write(help)
    return 0
  }
  const answers = usage.numbers.map((number) => answer(number, usage.height))
  const described = answers.filter((each) => 'name' in each)
  const refused = answers.filter((each) => 'error' in each)
  if (usage.json) out.write(`${JSON.stringify(answers, null, 2)}\n`)
  else if (described.length > 0) out.write(toTable([headings, ...described.map(row)]))
  for (const { dive, error } of refused) err.write(`plumbline dive: "${dive}" is refused: ${error}\n`)
  return refused.length > 0 ? 1 : 0
}

export const run = (args: string[]): Promise<number> => dive(args, process.stdout, process.stderr)
