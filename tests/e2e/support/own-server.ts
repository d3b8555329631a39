import fs from 'node:fs'
import path from 'node:path'
import { freePort } from '../../../scripts/platform/ports.mjs'
import { type Identity, stop } from '../../../scripts/platform/processes.mjs'
import { freshSecrets, getSecrets } from '../../../scripts/platform/secrets.mjs'
import { addressOf, startWeb, webEnv } from '../../../scripts/platform/web.mjs'
import { buildFolder } from '../../support/server'
import type { Demo } from './demo'

/** A server of one test, on the demo's database and always at the same address, that can be killed and started again. */
export interface OwnServer {
  readonly url: string
  /** Folder that it serves from. */
  readonly folder: string
  readonly start: () => Promise<void>
  /** As when the machine loses power: no request is answered any more, no connection closed in order. */
  readonly kill: () => Promise<void>
}

const host = '127.0.0.1'

/** Starts it. `copy` gives it files of its own, to be changed. Kill it in a `finally`. */
export async function startOwnServer(demo: Demo, copy?: string): Promise<OwnServer> {
  const built = await buildFolder()
  if (copy) fs.cpSync(built, copy, { recursive: true, verbatimSymlinks: true })
  const folder = copy ?? built
  const port = await freePort()
  const url = addressOf(host, port)
  const secrets = { ...freshSecrets(), actionsKey: getSecrets().actionsKey }
  const env = webEnv({
    host,
    port,
    url,
    appUrl: demo.database.app,
    secrets,
    stateFolder: demo.stateFolder,
    demo: false,
  })
  const note = path.join(demo.stateFolder, `web-${port}.json`)
  let running: Identity | null = null
  const start = async () => {
    const { server } = await startWeb({ folder, env, url, log: path.join(demo.stateFolder, `web-${port}.log`) })
    fs.writeFileSync(note, JSON.stringify(server))
    running = server
  }
  const kill = async () => {
    if (running) await stop(running, 'SIGKILL', 10_000)
    running = null
    fs.rmSync(note, { force: true })
  }
  await start()
  return { url, folder, start, kill }
}
