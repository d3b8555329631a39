import { execFile } from 'node:child_process'
import path from 'node:path'
import { inject } from 'vitest'
import { typescript } from '../../scripts/platform/install.mjs'
import { databaseUrls } from './database'

const root = path.resolve(import.meta.dirname, '../..')

/** The password that the tests give the demo's sign-ins. */
export const demoPassword = 'for-the-tests-only'

/** A database beside this file's own. */
export const second = `second_${process.env.VITEST_WORKER_ID}`

/** How a loading ended: its exit code and what it said on stderr. */
export interface Ran {
  readonly code: number
  readonly said: string
}

const named = (url: string, database: string): string => {
  const address = new URL(url)
  address.pathname = `/${database}`
  return address.href
}

/** Loads the demo as the launcher does: a process of its own, with the addresses in its environment. */
export function seed(urls: { owner: string; app: string }, state: string, ...args: string[]): Promise<Ran> {
  const env = {
    ...process.env,
    DATABASE_URL: urls.owner,
    DATABASE_APP_URL: urls.app,
    PLUMBLINE_DEMO_PASSWORD: demoPassword,
    PLUMBLINE_STATE: state,
  }
  const command = [...typescript('seed/run.ts'), ...args]
  return new Promise((resolve) => {
    execFile(process.execPath, command, { cwd: root, env }, (error, _out, said) =>
      resolve({ code: error ? Number(error.code ?? 1) : 0, said: said || String(error?.signal ?? '') }),
    )
  })
}

/** Where this file's loadings leave what belongs to no database. */
export const ownState = (): string => path.join(inject('stateFolder'), `demo-${process.env.VITEST_WORKER_ID}`)
/** The addresses of the second database. */
export const secondUrls = () => ({ owner: named(databaseUrls().owner, second), app: named(databaseUrls().app, second) })
