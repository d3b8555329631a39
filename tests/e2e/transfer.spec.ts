import type { Browser } from '@playwright/test'
import { type Cove, closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

test.use({ expectedErrors: [/404/] })

let coves: readonly [Cove, Cove]
test.beforeAll(({ demo }) => {
  coves = [makeCove(demo), makeCove(demo)]
})
test.afterAll(async ({ demo }) => {
  for (const cove of coves) await closeCove(demo, cove)
})

async function signedIn(browser: Browser, demo: Demo, email: string) {
  const page = await (await browser.newContext({ baseURL: demo.url })).newPage()
  await signInAs(page, demo, email)
  return page
}

test('a diver moves when both head coaches agree, and who sees her follows', async ({ browser, demo }) => {
  const [from, to] = coves
  const { diver } = from
  const [old, next] = [await signedIn(browser, demo, from.emails.head), await signedIn(browser, demo, to.emails.head)]
  const assistant = await signedIn(browser, demo, from.emails.assistant)
  const herPage = `/desk/divers/${diver}`
  expect((await next.request.get(herPage)).status()).toBe(404)

  await old.goto(herPage)
  await old.getByRole('link', { name: 'Moving' }).click()
  await old.getByLabel('To', { exact: true }).selectOption(to.name)
  await old.getByRole('button', { name: 'Propose it' }).click()
  await old.waitForURL(/transfers\?done=proposed/)
  await expect(old.getByRole('region', { name: 'Waits for the other club' })).toContainText('Sunniva Marsh')
  expect((await next.request.get(herPage)).status()).toBe(404)

  await next.goto('/desk/squads')
  await next.getByRole('link', { name: 'Transfers · 1 to answer' }).click()
  await next.getByRole('button', { name: 'Agree' }).click()
  await next.waitForURL(/done=agreed/)
  await next.goto(herPage)
  await expect(next.getByText(`Sunniva Marsh · ${to.name}`)).toBeVisible()
  await expect(next.getByRole('region', { name: 'Last attempts' }).getByRole('listitem')).not.toHaveCount(0)
  for (const page of [old, assistant]) expect((await page.request.get(herPage)).status()).toBe(404)
  expect(await (await assistant.request.get('/api/deck/snapshot')).text()).not.toContain(diver)

  await next.getByRole('link', { name: 'Moving' }).click()
  await next.getByText('Leave the club').click()
  await next.getByRole('button', { name: 'Sunniva Marsh leaves the club' }).click()
  await next.waitForURL(/done=left/)
  for (const page of [old, next]) expect((await page.request.get(herPage)).status()).toBe(404)
  await next.getByRole('button', { name: 'Take Sunniva Marsh back' }).click()
  await next.waitForURL(`**${herPage}`)
  await expect(next.getByText(`Sunniva Marsh · ${to.name}`)).toBeVisible()
  for (const page of [old, next, assistant]) await page.context().close()
})
