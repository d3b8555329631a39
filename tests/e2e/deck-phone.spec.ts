import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { chanceOf } from '../../seed/demo/chance'
import { type Cove, closeCove, makeCove } from './support/cove'
import { age, whoseRecords } from './support/device'
import { startOwnServer } from './support/own-server'
import { signInAs } from './support/people'
import { allSent, expectExactly, listStored, type Rated, rate } from './support/rater'
import { expect, test } from './support/test'

const skill = 'fall-in'
const sync = '**/api/deck/sync'
const chance = chanceOf('deck phone')
const atPool = (cove: Cove) => `/deck#/diver/${cove.diver}/${skill}@poolside`
const controlled = (page: Page) => page.waitForFunction(() => navigator.serviceWorker.controller !== null)

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  // What a page says when its requests fail, which is what these tests make them do.
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_CONNECTION_REFUSED|401|503/],
})

async function signOut(page: Page): Promise<void> {
  page.once('dialog', (dialog) => void dialog.accept())
  await page.goto('/desk/divers')
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.waitForURL('**/account/sign-in')
}

test('a second person sees nothing of the first, whose ratings wait for her', async ({ page, context, demo }) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto(atPool(cove))
    await context.route(sync, (route) => route.abort())
    const rated: Rated[] = [await rate(page, chance)]
    await expect(page.getByRole('link', { name: /3 unsent/ })).toBeVisible()

    await signOut(page)
    await expect(page.getByText('3 entries recorded on this device could not be sent yet')).toBeVisible()
    expect(await whoseRecords(page)).toMatchObject({ outbox: [cove.assistant], snapshots: [] })

    await context.unroute(sync)
    await signInAs(page, demo, cove.emails.head)
    await page.goto('/deck')
    await expect(page.getByText('Another coach left 3 unsent entries on this phone')).toBeVisible()
    await expect(page.getByRole('link', { name: /all sent/ })).toBeVisible()
    await page.getByRole('link', { name: 'What you saw lately' }).click()
    await expect(page.getByText('Sunniva')).toBeHidden()
    expect(await whoseRecords(page)).toMatchObject({ outbox: [cove.assistant], snapshots: [cove.head] })
    expect(await listStored(demo, cove.diver, skill)).toEqual([])
    await signOut(page)

    await signInAs(page, demo, cove.emails.assistant)
    await page.goto('/deck')
    await allSent(page)
    await expectExactly(demo, cove.diver, skill, rated)
    await signOut(page)
    await expect.poll(() => whoseRecords(page)).toEqual({ contacts: [], marks: [], outbox: [], snapshots: [] })
  } finally {
    await closeCove(demo, cove)
  }
})

test('a deck that is open closes when somebody else signs in on another page', async ({ page, context, demo }) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto('/deck')
    await expect(page.getByRole('link', { name: /Sunniva/ })).toBeVisible()
    const other = await context.newPage()
    await signInAs(other, demo, cove.emails.head)
    await other.close()
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
    await expect(page.getByRole('heading', { name: 'The deck is closed' })).toBeVisible()
    await expect(page.getByText('Sunniva')).toBeHidden()
  } finally {
    await closeCove(demo, cove)
  }
})

test('opens without a network, says when it last had one, and warns before what is unsent is left', async ({
  page,
  context,
  demo,
}) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto('/deck')
    await expect(page.getByText('Last contact with the server')).toBeVisible()
    await controlled(page)
    await context.setOffline(true)
    await page.goto('/desk/divers')
    await expect(page.getByRole('heading', { name: 'No connection' })).toBeVisible()
    await page.getByRole('link', { name: 'Open the deck' }).click()
    await expect(page.getByRole('link', { name: /Sunniva/ })).toBeVisible()
    await expect(page.getByText('What is shown here is from before')).toBeVisible()
    await page.goto(atPool(cove))
    await rate(page, chance)
    const asked = page.waitForEvent('dialog')
    const leaving = page.goto('/desk/divers').catch(() => 'stayed')
    const dialog = await asked
    expect(dialog.type()).toBe('beforeunload')
    await dialog.dismiss()
    expect(await leaving).toBe('stayed')
    await expect(page.getByRole('link', { name: /3 unsent/ })).toBeVisible()
    await context.setOffline(false)
    await allSent(page)
  } finally {
    await closeCove(demo, cove)
  }
})

test('after thirty days without use nothing is left but what is unsent', async ({ page, context, demo }) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto(atPool(cove))
    await controlled(page)
    await context.setOffline(true)
    const rated = [await rate(page, chance)]
    await age(page, 31)
    page.once('dialog', (dialog) => void dialog.accept())
    await page.reload()
    await expect(page.getByRole('heading', { name: 'The deck did not open' })).toBeVisible()
    expect(await whoseRecords(page)).toMatchObject({ outbox: [cove.assistant], snapshots: [] })
    await context.setOffline(false)
    await allSent(page)
    await expectExactly(demo, cove.diver, skill, rated)
  } finally {
    await closeCove(demo, cove)
  }
})

test('a newer deck waits until the coach loads it, and the older one goes on meanwhile', async ({ browser, demo }) => {
  const cove = makeCove(demo)
  const copy = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-copy-'))
  const server = await startOwnServer(demo, copy)
  const context = await browser.newContext({ baseURL: server.url, viewport: { width: 390, height: 844 } })
  try {
    const page = await context.newPage()
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto(atPool(cove))
    await controlled(page)
    const caches = () => page.evaluate(() => window.caches.keys())
    const [before] = await caches()
    const worker = path.join(copy, 'public/sw.js')
    fs.writeFileSync(worker, fs.readFileSync(worker, 'utf8').replace(/version = "\w+"/, 'version = "newer"'))
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
    await expect.poll(caches).toEqual([before, 'plumbline-deck-newer'])
    const rated = [await rate(page, chance)]
    await allSent(page)
    await page.goto('/deck#/')
    const load = page.getByRole('button', { name: 'New version: load it' })
    await load.click()
    await expect.poll(() => caches().catch(() => [])).toEqual(['plumbline-deck-newer'])
    await expect(page.getByRole('link', { name: /Sunniva/ }).first()).toBeVisible()
    await expect(load).toBeHidden()
    await expectExactly(demo, cove.diver, skill, rated)
  } finally {
    await context.close()
    await server.kill()
    fs.rmSync(copy, { recursive: true, force: true })
    await closeCove(demo, cove)
  }
})
