import { parseArgs } from 'node:util'
import type { Scope } from '../../lib/access/scope'
import { evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { remaining } from '../../lib/assessment/readiness/remaining'
import { sayTarget } from '../../lib/assessment/readiness/say-target'
import { listTargets, readTarget } from '../../lib/assessment/readiness/targets'
import { readDiverAsOf } from '../../lib/assessment/store/reads'
import { asOfDay, asOfInstant, formatDay, parseDay } from '../../lib/assessment/time'
import { atConsole } from './console'
import { understood } from './understood'

const usage = 'Usage: plumbline readiness --diver ID [--date YYYY-MM-DD] [--json]\n'

interface Asked {
  readonly diver: string
  /** Day number; null is today. */
  readonly day: number | null
  readonly json: boolean
}

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): Asked {
  const { values } = parseArgs({
    args,
    options: { diver: { type: 'string' }, date: { type: 'string' }, json: { type: 'boolean', default: false } },
  })
  if (!values.diver) throw new Error('name the diver: --diver ID, as the command divers lists it')
  if (!/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(values.diver))
    throw new Error(`"${values.diver}" is not a diver's id`)
  return { diver: values.diver, day: values.date === undefined ? null : parseDay(values.date), json: values.json }
}

async function answer(scope: Scope, asked: Asked) {
  const found = await readDiverAsOf(scope, asked.diver, (zone) =>
    asked.day === null ? scope.at : asOfDay(asked.day, zone).instant,
  )
  if (!found) return null
  const { file, curriculum } = found
  const date = asked.day === null ? asOfInstant(scope.at, file.zone) : asOfDay(asked.day, file.zone)
  const evaluation = evaluationOf(curriculum, file.record, date)
  const words = { curriculum, today: date.day, diver: file.givenName }
  const targets = listTargets(curriculum).map((target) => {
    const finding = readTarget(evaluation, target)
    const left = finding.held === 'no' ? remaining(evaluation, target) : null
    const { headline, lines } = sayTarget(finding, words, left)
    return {
      target,
      status: finding.finding.status,
      held: finding.held,
      ready: finding.ready,
      remaining: left,
      headline,
      lines,
    }
  })
  return {
    diver: file.id,
    name: `${file.givenName} ${file.familyName}`,
    date: formatDay(date.day),
    edition: curriculum.hash,
    targets,
  }
}

async function tell(asked: Asked): Promise<number> {
  const found = await atConsole((scope) => answer(scope, asked))
  if (!found) {
    process.stderr.write(`No diver of the programme has the id ${asked.diver}.\n`)
    return 1
  }
  const text = found.targets
    .map(({ headline, lines }) => `${headline}\n${lines.map((line) => `  ${line}\n`).join('')}`)
    .join('\n')
  process.stdout.write(asked.json ? `${JSON.stringify(found, null, 2)}\n` : `${found.name}, ${found.date}\n\n${text}`)
  return 0
}

/** `readiness --diver ID [--date D]`: what a diver is ready for, and why not, as of a date. */
export const run = (args: string[]): Promise<number> => understood(usage, () => parse(args), tell)
