import { parseArgs } from 'node:util'
import { checkReadiness } from '../../lib/assessment/store/check-readiness'
import { atConsole } from './console'

const usage = 'Usage: plumbline rebuild --check [--json]\n'

/** `rebuild --check`: what is kept for speed against a fresh evaluation of all raw rows. */
export async function run(args: string[]): Promise<number> {
  let json: boolean
  try {
    const { values } = parseArgs({
      args,
      options: { check: { type: 'boolean', default: false }, json: { type: 'boolean', default: false } },
    })
    if (!values.check) throw new Error('say --check: nothing is rebuilt without being compared first')
    json = values.json
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${usage}`)
    return 2
  }
  const found = await atConsole(checkReadiness)
  const lines = found.differences.map(({ diver, target, what }) => `${diver} ${target}: ${what}\n`).join('')
  const summary = `${found.divers} divers, ${found.rows} rows compared, ${found.due} due to be worked out again today, ${found.differences.length} differ\n`
  process.stdout.write(json ? `${JSON.stringify(found, null, 2)}\n` : `${lines}${summary}`)
  return found.differences.length === 0 ? 0 : 1
}
