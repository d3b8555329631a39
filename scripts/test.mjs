import { ensureInstalled } from './platform/install.mjs'
import { explain, secondsSince } from './platform/progress.mjs'
import { stages } from './platform/stages.mjs'

/**
 * `npm test`: every stage, also after one has failed; `npm test -- unit lint` runs those. `--long` runs the full form of
 * tests that have a short one. The last line is the count.
 * @param {string[]} args @returns {Promise<number>} exit code
 */
async function main(args) {
  const names = args.filter((arg) => arg !== '--long')
  const unknown = names.filter((name) => !stages.some((stage) => stage.name === name))
  if (unknown.length > 0) {
    const known = stages.map((stage) => stage.name).join(', ')
    process.stderr.write(`There is no stage ${unknown.join(', ')}. The stages are ${known}.\n`)
    return 2
  }
  await ensureInstalled()
  const { DATABASE_URL: _owner, DATABASE_APP_URL: _app, NODE_ENV: _mode, ...inherited } = process.env
  const env = /** @type {NodeJS.ProcessEnv} */ ({
    ...inherited,
    ...(args.includes('--long') ? { PLUMBLINE_LONG: '1' } : {}),
  })
  const total = { passed: 0, failed: 0 }
  const table = []
  for (const stage of stages.filter(({ name }) => names.length === 0 || names.includes(name))) {
    process.stdout.write(`\n── ${stage.name}\n`)
    const began = performance.now()
    const { passed, failed } = await stage.work(env)
    table.push(`${stage.name.padEnd(14)}${secondsSince(began).padStart(7)} s   ${passed} passed, ${failed} failed`)
    total.passed += passed
    total.failed += failed
  }
  process.stdout.write(`\n${table.join('\n')}\n\n${total.passed} passed, ${total.failed} failed\n`)
  return total.failed === 0 ? 0 : 1
}

try {
  process.exitCode = await main(process.argv.slice(2))
} catch (error) {
  process.stderr.write(`${explain(error)}\n`)
  process.stdout.write('0 passed, 1 failed\n')
  process.exitCode = 1
}
