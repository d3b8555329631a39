import { chromium } from '@playwright/test'
import type { Cluster } from '../../scripts/database/own-cluster'
import { browserFlags, findBrowser } from '../support/browser'
import { startServer } from '../support/server'
import { evening } from './evening'
import { fiftyPhones } from './fifty-phones'
import { type FullHouse, makeFullHouse } from './full-house'
import { asCoach, phoneLoad } from './phone-load'

const phones = 50
const [divers, attemptsEach] = [12, 3]
const say = (line: string) => process.stdout.write(`${line}\n`)
const ms = (value: number) => `${Math.round(value)} ms`
const kib = (bytes: number) => `${Math.round(bytes / 1024)} KiB`

async function measure(house: FullHouse, url: string): Promise<void> {
  const [first] = house.coaches
  if (!first) throw new Error('nobody coaches')
  const browser = await chromium.launch({ executablePath: findBrowser(), args: browserFlags })
  try {
    const load = await phoneLoad(browser, url, first.token)
    const parts = Object.entries(load.bytes).sort(([, a], [, b]) => b - a)
    say(`deck, page weight          ${kib(parts.reduce((sum, [, size]) => sum + size, 0))} on the line`)
    say(`                           ${parts.map(([type, size]) => `${type} ${kib(size)}`).join(' · ')}`)
    say(
      `deck, until it can be used ${ms(load.first)} the first time, ${ms(load.again)} from then on (4× slower, slow 4G)`,
    )

    const context = await asCoach(browser, url, first.token)
    const page = await context.newPage()
    await page.goto('/deck')
    const done = await evening(page, divers, attemptsEach)
    say(
      `12 divers × 3 attempts     ${done.taps} taps, ${done.seconds.toFixed(1)} s with 0.4 s between taps, ${done.attempts} kept`,
    )
    say(
      `one attempt, one fault     ${done.tapsAnAttempt} taps, ${done.secondsAnAttempt.toFixed(1)} s (slowest ${done.slowestAttempt.toFixed(1)} s)`,
    )
    const edition: string = await page.evaluate(
      async () => (await (await fetch('/api/deck/snapshot')).json()).edition.hash,
    )
    await context.close()

    const sync = await fiftyPhones(url, house, edition)
    say(
      `sync, 50 phones at once    p50 ${ms(sync.p50)}, p95 ${ms(sync.p95)}, slowest ${ms(sync.slowest)} for a batch of 7`,
    )
    say(
      `                           ${sync.items} items in ${sync.requests} batches, ${Math.round(sync.items / sync.seconds)} items/s`,
    )
  } finally {
    await browser.close()
  }
}

/** The deck as a phone has it, on a database that holds the region: weight, time, taps, and fifty phones at once. */
export async function timeDeck(cluster: Cluster, database: string): Promise<void> {
  const house = await makeFullHouse(cluster, database, phones)
  const server = await startServer(cluster, database)
  try {
    await measure(house, server.url)
  } finally {
    await server.stop()
  }
}
