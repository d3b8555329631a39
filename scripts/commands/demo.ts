import { parseArgs } from 'node:util'
import pg from 'pg'
import { readPrepared, writeAgain, writePrepared } from '../../seed/demo/prepared/file'
import { readKept } from '../../seed/demo/prepared/kept'
import { madeOf } from '../../seed/demo/prepared/made-of'
import { migrateInto, startCluster } from '../database/own-cluster'
import { typescript } from '../platform/install.mjs'
import { root } from '../platform/paths.mjs'
import { run as runProgram } from '../platform/processes.mjs'
import { step } from '../platform/progress.mjs'
import { understood } from './understood'

const usage = 'Usage: plumbline demo --check | --write\n'
const database = 'prepared'

/** Tells the seasons on a PostgreSQL of its own and writes down what they yield. */
async function write(): Promise<number> {
  // What the telling is about to read: a change made meanwhile does not count as told.
  const made = madeOf()
  const cluster = await startCluster()
  try {
    await migrateInto(cluster, database)
    const { owner, app } = cluster.urls(database)
    const env = {
      ...process.env,
      DATABASE_URL: owner,
      DATABASE_APP_URL: app,
      PLUMBLINE_STATE: cluster.folder,
      PLUMBLINE_DEMO_PASSWORD: cluster.secrets.demoPassword,
    }
    const telling = { cwd: root, env, log: `${cluster.folder}/demo.log`, what: 'Telling the demo', show: true }
    await step('tell the seasons', () =>
      runProgram(process.execPath, [...typescript('seed/run.ts'), '--tell'], telling),
    )
    const client = new pg.Client({ connectionString: owner })
    await client.connect()
    const rows = await readKept(client)
    await client.end()
    const bytes = await step('write them down', async () => writePrepared(rows, made))
    process.stdout.write(`seed/demo/prepared is written: ${(bytes / 1_000_000).toFixed(1)} MB. Commit it.\n`)
    return 0
  } finally {
    await cluster.close()
  }
}

/** Whether the prepared demo is whole and fits the repository. What it holds is compared with a telling by the tests. */
function check(): number {
  const prepared = readPrepared()
  process.stdout.write(
    prepared.ok
      ? 'The prepared demo fits.\n'
      : `The prepared demo does not fit: ${prepared.why}. Write it again: ${writeAgain}\n`,
  )
  return prepared.ok ? 0 : 1
}

/** Throws an Error whose message says how the arguments are wrong. */
function parse(args: string[]): 'check' | 'write' {
  const options = { check: { type: 'boolean', default: false }, write: { type: 'boolean', default: false } } as const
  const { values } = parseArgs({ args, options })
  if (values.check === values.write) throw new Error('say either --check or --write')
  return values.write ? 'write' : 'check'
}

/** `demo --write` prepares the demo that `npm start` loads; `demo --check` says whether what is kept in git fits. */
export const run = (args: string[]): Promise<number> =>
  understood(
    usage,
    () => parse(args),
    async (asked) => (asked === 'write' ? write() : check()),
  )
