import { expect } from '@playwright/test'
import pg from 'pg'
import type { Chance } from '../../../seed/demo/chance'
import type { Demo } from './demo'
import type { OwnServer } from './own-server'
import type { Phone } from './phone'
import { allSent, keptLine, mark, pressKeep, type Rated, rate } from './rater'

/** What befalls a coach who goes on rating. */
export interface Trouble {
  readonly demo: Demo
  readonly server: OwnServer
  readonly phone: Phone
  readonly diver: string
  readonly chance: Chance
  /** Rates so many, and remembers them. */
  readonly rateSome: (count: number) => Promise<void>
  readonly remember: (rated: Rated) => void
}

const sync = '**/api/deck/sync'
const deckIsOpen = ({ phone }: Trouble) =>
  expect(phone.page().getByRole('link', { name: /unsent|all sent|to mend/ })).toBeVisible({ timeout: 20_000 })
const unsent = ({ phone }: Trouble) => expect(phone.page().getByRole('link', { name: /\d+ unsent/ })).toBeVisible()
const sendNow = ({ phone }: Trouble) => phone.page().evaluate(() => window.dispatchEvent(new Event('online')))

/** Reloads although something is unsent: the browser asks, and the coach says yes. */
async function reload(trouble: Trouble): Promise<void> {
  const page = trouble.phone.page()
  page.once('dialog', (dialog) => void dialog.accept())
  await page.reload()
  await deckIsOpen(trouble)
}

/** Holds the diver's row, so that the server sits in the middle of a batch until it is let go. */
async function holdDiver({
  demo,
  diver,
}: Trouble): Promise<{ waiters: () => Promise<number>; letGo: () => Promise<void> }> {
  const client = new pg.Client({ connectionString: demo.database.superuser })
  await client.connect()
  await client.query('BEGIN')
  await client.query('SELECT 1 FROM "Diver" WHERE "id" = $1 FOR UPDATE', [diver])
  return {
    waiters: async () =>
      Number(
        (await client.query("SELECT count(*) FROM pg_stat_activity WHERE wait_event_type = 'Lock'")).rows[0].count,
      ),
    letGo: async () => {
      await client.query('ROLLBACK')
      await client.end()
    },
  }
}

type Fault = (trouble: Trouble, ratings: number) => Promise<void>

/** Each fault goes on until the phone is connected to a running server again; what was rated in it may still be unsent. */
export const faults: Readonly<Record<string, Fault>> = {
  async 'the network is cut'(trouble, ratings) {
    await trouble.phone.context().setOffline(true)
    await trouble.rateSome(ratings)
    await unsent(trouble)
    await trouble.phone.context().setOffline(false)
  },

  async 'the page is reloaded without a network'(trouble, ratings) {
    await trouble.phone.context().setOffline(true)
    await trouble.rateSome(ratings)
    await reload(trouble)
    await unsent(trouble)
    await trouble.phone.context().setOffline(false)
  },

  async 'the server is killed and comes back'(trouble, ratings) {
    await trouble.server.kill()
    await trouble.rateSome(ratings)
    await reload(trouble)
    await trouble.server.start()
    await sendNow(trouble)
  },

  async 'the server is killed in the middle of a batch'(trouble, ratings) {
    await allSent(trouble.phone.page())
    const hold = await holdDiver(trouble)
    try {
      await trouble.rateSome(ratings)
      await expect.poll(hold.waiters).toBeGreaterThan(0)
      await trouble.server.kill()
    } finally {
      await hold.letGo()
    }
    await trouble.server.start()
    await sendNow(trouble)
  },

  async 'the answer is lost after the batch was stored'(trouble, ratings) {
    const context = trouble.phone.context()
    let lost = 0
    await context.route(sync, async (route) => {
      await route.fetch()
      lost += 1
      await route.abort()
    })
    await trouble.rateSome(ratings)
    await expect.poll(() => lost).toBeGreaterThan(0)
    await context.unroute(sync)
    await sendNow(trouble)
  },

  async 'the browser is killed with unsent ratings'(trouble, ratings) {
    const { hash } = new URL(trouble.phone.page().url())
    await trouble.phone.context().setOffline(true)
    await trouble.rateSome(ratings)
    await unsent(trouble)
    // What comes up again has a network, and no server behind it at first.
    await trouble.server.kill()
    await trouble.phone.killAndReopen()
    await trouble.phone.page().goto(`/deck${hash}`)
    await deckIsOpen(trouble)
    await unsent(trouble)
    await trouble.server.start()
    await sendNow(trouble)
  },

  async 'the same batch is sent again, twice at once'(trouble, ratings) {
    const bodies: { body: string; headers: Record<string, string> }[] = []
    const context = trouble.phone.context()
    await context.route(sync, async (route) => {
      const request = route.request()
      bodies.push({ body: request.postData() ?? '', headers: await request.allHeaders() })
      await route.continue()
    })
    await trouble.rateSome(ratings)
    await allSent(trouble.phone.page())
    await context.unroute(sync)
    const again = bodies
      .flatMap((batch) => [batch, batch])
      .map(({ body, headers }) =>
        context.request.post('/api/deck/sync', {
          data: body,
          headers: { 'content-type': 'application/json', 'x-deck-coach': headers['x-deck-coach'] ?? '' },
        }),
      )
    for (const answer of await Promise.all(again)) {
      expect(answer.status()).toBe(200)
      const results: { result: string }[] = await answer.json()
      expect(results.length).toBeGreaterThan(0)
      expect(results.every(({ result }) => result === 'known')).toBe(true)
    }
  },

  async 'two pages of the phone send at once'(trouble, ratings) {
    const context = trouble.phone.context()
    await context.setOffline(true)
    await trouble.rateSome(ratings)
    const second = await context.newPage()
    await second.goto('/deck')
    await expect(second.getByRole('link', { name: /\d+ unsent/ })).toBeVisible()
    await context.setOffline(false)
    await allSent(second)
    await second.close({ runBeforeUnload: false })
  },

  async 'the clock of the phone is wrong by an hour'(trouble, ratings) {
    const page = trouble.phone.page()
    await allSent(page)
    const shift = trouble.chance.pick([-1, 1]) * 3_600_000
    await page.evaluate((by) => {
      const right = Date.now
      Object.assign(window, { rightClock: right })
      Date.now = () => right() + by
    }, shift)
    await trouble.rateSome(ratings)
    // Sent by the same wrong clock, from which the server measures how wrong it is.
    await allSent(page)
    await page.evaluate(() => {
      if ('rightClock' in window) Date.now = window.rightClock as () => number
    })
  },

  async 'the phone has no room left'(trouble, ratings) {
    const { phone, server, chance } = trouble
    await trouble.rateSome(ratings - 1)
    const marked = await mark(phone.page(), chance)
    const { hash } = new URL(phone.page().url())
    // The browser remembers for half a minute how much room there was: a new one asks.
    await phone.reopen()
    const devtools = await phone.context().newCDPSession(phone.page())
    const { origin } = new URL(server.url)
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 })
    await phone.page().goto(`/deck${hash}`)
    await deckIsOpen(trouble)
    await pressKeep(phone.page(), true)
    await expect(phone.page().getByText('There is no room left on this phone')).toBeVisible()
    await devtools.send('Storage.overrideQuotaForOrigin', { origin })
    // What was marked is still there, also over the restart: a second tap keeps it, once.
    await pressKeep(phone.page(), true)
    await expect(keptLine(phone.page())).toBeVisible()
    trouble.remember({ ratings: marked, rest: true })
    await devtools.detach()
  },
}

/** Rates so many with `rate`, each remembered. */
export const rating =
  (phone: Phone, chance: Chance, remember: (rated: Rated) => void) =>
  async (count: number): Promise<void> => {
    for (let index = 0; index < count; index++) remember(await rate(phone.page(), chance))
  }
