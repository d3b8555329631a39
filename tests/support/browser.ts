import { execFileSync, spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { chromium } from '@playwright/test'

/** Chromium for the browser tests: never downloaded when the machine has one, never skipped when it has none. */

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']
const applications = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/snap/bin/chromium',
  '/opt/google/chrome/chrome',
  '/usr/lib/chromium/chromium',
]

const isRoot = process.getuid?.() === 0

/** What it needs on a closed network, without a display or graphics card, and as root. */
export const browserFlags = [
  ...(isRoot ? ['--no-sandbox'] : []),
  ...['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
  ...['--disable-component-update', '--disable-sync'],
]

const works = (file: string): boolean =>
  fs.existsSync(file) && spawnSync(file, ['--version', ...browserFlags], { timeout: 30_000 }).status === 0

function installed(): string | undefined {
  const folders = (process.env.PATH ?? '').split(path.delimiter)
  const onPath = names.flatMap((name) => folders.map((folder) => path.join(folder, name)))
  return [...onPath, ...applications, chromium.executablePath()].find(works)
}

/** One try; what it says goes to stderr, because it takes a while. */
function attempt(command: string, args: string[], seconds: number): void {
  try {
    execFileSync(command, args, { timeout: seconds * 1000, stdio: ['ignore', 2, 2] })
  } catch (error) {
    process.stderr.write(`${command} ${args.join(' ')}: ${error instanceof Error ? error.message : error}\n`)
  }
}

const choices = `No Chromium was found for the browser tests. Either
  - install it (Debian: apt-get install chromium; macOS: an ordinary Chrome will do), or
  - give its path: PLUMBLINE_BROWSER=/path/to/chromium npm test, or
  - with the internet at hand: npx playwright install chromium`

/** Path of a Chromium that starts. Throws Error with the choices when there is none and none could be installed. */
export function findBrowser(): string {
  const given = process.env.PLUMBLINE_BROWSER
  if (given && !works(given)) throw new Error(`PLUMBLINE_BROWSER=${given} does not start. ${choices}`)
  let found = given ?? installed()
  if (!found) {
    attempt('npx', ['playwright', 'install', 'chromium'], 120)
    found = installed()
  }
  if (!found && isRoot && fs.existsSync('/etc/debian_version')) {
    attempt('apt-get', ['update'], 120)
    attempt('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], 300)
    found = installed()
  }
  if (!found) throw new Error(choices)
  // Workers load the configuration again; they need not search.
  process.env.PLUMBLINE_BROWSER = found
  return found
}
