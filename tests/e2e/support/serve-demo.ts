import fs from 'node:fs'
import path from 'node:path'
import { asDatabase, startCluster } from '../../../scripts/database/own-cluster'
import { fillDatabase } from '../../../scripts/platform/contents.mjs'
import { startServer } from '../../support/server'
import type { Demo } from './demo'

/** Once a run: a server of our own with the demo, on a database that nothing else uses. */
export default async function serveDemo(): Promise<() => Promise<void>> {
  const cluster = await startCluster()
  try {
    await fillDatabase(asDatabase(cluster, 'plumbline'), cluster.secrets)
    const server = await startServer(cluster, 'plumbline', { demo: true })
    const signIns = path.join(cluster.folder, 'demo-sign-ins.json')
    const demo: Demo = {
      url: server.url,
      password: cluster.secrets.demoPassword,
      signIns: fs.existsSync(signIns) ? JSON.parse(fs.readFileSync(signIns, 'utf8')) : [],
      database: cluster.urls('plumbline'),
      stateFolder: cluster.folder,
    }
    process.env.PLUMBLINE_E2E = JSON.stringify(demo)
    return async () => {
      await server.stop()
      await cluster.close()
    }
  } catch (error) {
    await cluster.close()
    throw error
  }
}
