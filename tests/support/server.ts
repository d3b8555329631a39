import fs from 'node:fs'
import path from 'node:path'
import type { Cluster } from '../../scripts/database/own-cluster'
import { ensureBuilt, isBuilt } from '../../scripts/platform/build.mjs'
import { freePort } from '../../scripts/platform/ports.mjs'
import { getSecrets } from '../../scripts/platform/secrets.mjs'
import { addressOf, startWeb, stopWeb, webEnv } from '../../scripts/platform/web.mjs'

export interface Server {
  readonly url: string
  readonly log: string
  readonly stop: () => Promise<void>
}

/** The production build: the one that `npm start` serves when it fits, else one beside it. */
export async function buildFolder(): Promise<string> {
  const { actionsKey } = getSecrets()
  return ensureBuilt(isBuilt('.next', actionsKey) ? '.next' : '.next-test', actionsKey)
}

/** Serves one database of the cluster from the production build on a free port. Stop it in a `finally`. */
export async function startServer(cluster: Cluster, database: string, { demo = false } = {}): Promise<Server> {
  const host = '127.0.0.1'
  const folder = await buildFolder()
  const port = await freePort()
  const url = addressOf(host, port)
  const log = path.join(cluster.folder, `web-${port}.log`)
  const secrets = { ...cluster.secrets, actionsKey: getSecrets().actionsKey }
  const appUrl = cluster.urls(database).app
  const { server } = await startWeb({
    folder,
    env: webEnv({ host, port, url, appUrl, secrets, stateFolder: cluster.folder, demo }),
    url,
    log,
  })
  fs.writeFileSync(path.join(cluster.folder, 'web.json'), JSON.stringify(server))
  return { url, log, stop: () => stopWeb(server) }
}
