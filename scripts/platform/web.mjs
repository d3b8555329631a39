import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { commandLine, identify, isRunning, stop, tail, workingFolder } from './processes.mjs'
import { Refusal } from './progress.mjs'

/** @typedef {import('./processes.mjs').Identity} Identity */

/**
 * What the web process finds in its environment: never the owner's address, nor anything else of the launcher's own.
 * @param {{ host: string, port: number, url: string, appUrl: string, secrets: import('./secrets.mjs').Secrets,
 *   stateFolder: string, demo: boolean }} options
 */
export function webEnv({ host, port, url, appUrl, secrets, stateFolder, demo }) {
  const inherited = Object.entries(process.env).filter(
    ([name]) => !/^(npm_|PG[A-Z]+$|DATABASE_|PLUMBLINE_|NODE_ENV$)/.test(name),
  )
  return {
    ...Object.fromEntries(inherited),
    NODE_ENV: /** @type {const} */ ('production'),
    HOSTNAME: host,
    PORT: String(port),
    DATABASE_APP_URL: appUrl,
    NEXTAUTH_SECRET: secrets.sessionSecret,
    NEXTAUTH_URL: url,
    NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: secrets.actionsKey,
    NEXT_TELEMETRY_DISABLED: '1',
    PLUMBLINE_STATE: stateFolder,
    // On this machine alone, localhost and 127.0.0.1 are the same address.
    ...(isLoopback(host) ? { AUTH_TRUST_HOST: 'true' } : {}),
    ...(demo ? { PLUMBLINE_DEMO_PASSWORD: secrets.demoPassword } : {}),
  }
}

/** @param {string} host */
export const isLoopback = (host) => ['127.0.0.1', 'localhost', '::1'].includes(host)

/** @param {string} host @param {number} port */
export const addressOf = (host, port) => {
  const name = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}`
}

/** @param {string} url @returns {Promise<boolean>} */
export async function isHealthy(url) {
  try {
    const answer = await fetch(`${url}/api/health`, { signal: AbortSignal.timeout(2_000) })
    return answer.ok && (await answer.json()).status === 'ok'
  } catch {
    return false
  }
}

/**
 * Starts the server in a process group of its own and waits until it can do its work.
 * @param {{ folder: string, env: NodeJS.ProcessEnv, url: string, log: string }} options
 * @returns {Promise<{ server: Identity, ended: Promise<void> }>}
 */
export async function startWeb({ folder, env, url, log }) {
  fs.mkdirSync(path.dirname(log), { recursive: true })
  const file = fs.openSync(log, 'w', 0o600)
  const child = spawn(process.execPath, ['server.js'], {
    cwd: folder,
    env,
    detached: true,
    stdio: ['ignore', file, file],
  })
  fs.closeSync(file)
  const server = identify(child.pid ?? 0)
  let gone = false
  const ended = new Promise((resolve) => {
    for (const event of ['exit', 'error']) child.once(event, resolve)
  }).then(() => {
    gone = true
  })
  const until = Date.now() + 60_000
  while (!(await isHealthy(url))) {
    if (!gone && Date.now() < until) {
      await sleep(50)
      continue
    }
    await stop(server, 'SIGTERM', 2_000)
    throw new Refusal(
      `The web server ${gone ? 'ended' : 'gave no healthy answer within a minute'}. Its last words, all of them in ${log}:\n${tail(log, 30)}`,
    )
  }
  // The first page takes half a second more than the next: nobody should be the one who waits for it.
  await fetch(`${url}/account/sign-in`, { signal: AbortSignal.timeout(10_000) })
    .then((page) => page.text())
    .catch(() => undefined)
  return { server, ended }
}

/** Whether that process is a web server of this folder, not whatever else has its number now. @param {Identity | null} server @param {string} folder */
export const isOurWeb = (server, folder) =>
  server !== null &&
  isRunning(server) &&
  /next-server|server\.js/.test(commandLine(server.pid)) &&
  workingFolder(server.pid) === fs.realpathSync(folder)

/** Requests that run are answered first. @param {Identity} server */
export const stopWeb = (server) => stop(server, 'SIGTERM', 10_000)
