import { parseArgs } from 'node:util'
import { checkReadiness } from '../../lib/assessment/store/check-readiness'
import { atConsole } from './console'
import { understood } from './understood'

const usage = 'Usage: plumbline rebuild --check [--json]\n'

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): { readonly json: boolean } {
  const options = { check: { type: 'boolean', default: false }, json: { type: 'boolean', default: false } } as const
  const { values } = parseArgs({ args, options })
  if (!values.check) throw new Error('say --check: nothing is rebuilt without being compared first')
  return values
}

async function check({ json }: { readonly json: boolean }): Promise<number> {
  const found = await atConsole(checkReadiness)
  const lines = found.differences.map(({ diver, target, what }) => `${diver} ${target}: ${what}\n`).join('')
  const summary = `${found.divers} divers, ${found.rows} rows compared, ${found.due} due to be worked out again today, ${found.differences.length} differ\n`
  process.stdout.write(json ? `${JSON.stringify(found, null, 2)}\n` : `${lines}${summary}`)
  return found.differences.length === 0 ? 0 : 1
}

/** `rebuild --check`: what is kept for speed against a fresh evaluation of all raw rows. */
export const run = (args: string[]): Promise<number> => understood(usage, () => parse(args), check)
