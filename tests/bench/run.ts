import { parseArgs } from 'node:util'
import { closeDatabase } from '../../lib/platform/db'
import { startBenchCluster } from '../support/bench-cluster'

/**
 * Times that a user feels, on a region of the demo's sixty divers, `--copies` times over. `sync`: a deck's batch of
 * fifty; `pages`: what the pages of many divers and of one read and work out, without sign-in and drawing; `deck`: the deck in a
 * browser, and fifty phones that send at once.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { copies: { type: 'string', default: '1' } },
})
const known = ['sync', 'pages', 'deck']
const wanted = positionals.length > 0 ? positionals : known
const copies = Number(values.copies)
if (wanted.some((name) => !known.includes(name)) || !Number.isInteger(copies) || copies < 1) {
  process.stderr.write('Usage: npm run bench -- [sync] [pages] [deck] [--copies N]\n')
  process.exit(2)
}

const cluster = await startBenchCluster()
try {
  // These read the environment, which is set only now.
  const { fillRegion } = await import('./region')
  await fillRegion(cluster.urls('bench').owner, copies)
  const { timeSync } = await import('./sync')
  const { timePages } = await import('./pages')
  const { timeDeck } = await import('./deck')
  if (wanted.includes('pages')) await timePages()
  if (wanted.includes('sync')) await timeSync()
  if (wanted.includes('deck')) await timeDeck(cluster, 'bench')
} finally {
  await closeDatabase()
  await cluster.close()
}
