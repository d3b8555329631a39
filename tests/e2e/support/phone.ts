import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { browserFlags, findBrowser } from '../../support/browser'

/** A coach's phone: a browser of its own, whose storage outlives the browser's process. */
export interface Phone {
  readonly page: () => Page
  readonly context: () => BrowserContext
  /** Closes the browser in order and opens it again: what it writes lazily, such as cookies, is on the disk then. */
  readonly reopen: () => Promise<void>
  /** Ends the browser as a phone does that runs out of memory, and opens it again. */
  readonly killAndReopen: () => Promise<void>
  readonly close: () => Promise<void>
  /** Errors that the pages threw. */
  readonly thrown: readonly string[]
}

const alive = (pid: number): boolean => {
  try {
    process.kill(pid, 0)
    return true
  } catch {
    return false
  }
}

/** The browser writes its machine and process into the name of a link in its folder. */
const processOf = (folder: string): number => Number(fs.readlinkSync(`${folder}/SingletonLock`).split('-').at(-1))

/** Opens a new phone. Close it in a `finally`. */
export async function openPhone(baseURL: string): Promise<Phone> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-phone-'))
  const thrown: string[] = []
  const launch = async () => {
    const context = await chromium.launchPersistentContext(folder, {
      baseURL,
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      locale: 'en-GB',
      timezoneId: 'Pacific/Chatham',
      executablePath: findBrowser(),
      args: browserFlags,
    })
    context.on('weberror', (error) => thrown.push(String(error.error().stack ?? error.error())))
    return context
  }
  let context = await launch()
  const page = () => context.pages()[0] ?? context.pages()[1]
  return {
    thrown,
    context: () => context,
    page: () => {
      const open = page()
      if (!open) throw new Error('the phone has no page open')
      return open
    },
    async reopen() {
      await context.close()
      context = await launch()
    },
    async killAndReopen() {
      const pid = processOf(folder)
      const closed = new Promise((resolve) => context.once('close', resolve))
      process.kill(pid, 'SIGKILL')
      await closed
      while (alive(pid)) await new Promise((resolve) => setTimeout(resolve, 20))
      context = await launch()
    },
    async close() {
      await context.close()
      fs.rmSync(folder, { recursive: true, force: true })
    },
  }
}
