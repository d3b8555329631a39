import AxeBuilder from '@axe-core/playwright'
import type { Browser, Page } from '@playwright/test'
import { type Cove, closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const phone = { width: 390, height: 844 }
const desk = { width: 1440, height: 900 }

const pageOf = async (browser: Browser, demo: Demo, viewport: { width: number; height: number }): Promise<Page> =>
  (await browser.newContext({ baseURL: demo.url, viewport })).newPage()

async function soundToAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
}

/** Opens a skill of the cove's diver on the deck. */
async function openSkill(deck: Page, name: RegExp): Promise<void> {
  await deck.goto('/deck')
  await deck
    .getByRole('link', { name: /Sunniva/ })
    .first()
    .click()
  await deck.getByRole('link', { name }).first().click()
}

/** What a form says; the framework announces routes in an alert of its own. */
const alertIn = (page: Page) => page.locator('form').getByRole('alert')
const headline = (page: Page) => page.getByRole('heading', { level: 1 })

// The phone loses its network on purpose.
test.use({ expectedErrors: [/ERR_INTERNET_DISCONNECTED/] })

let cove: Cove
test.beforeEach(({ demo }) => {
  cove = makeCove(demo)
})
test.afterEach(({ demo }) => closeCove(demo, cove))

test('a bad landing on a phone without a network pauses at once, reaches the head coach, and is cleared in writing', async ({
  browser,
  demo,
}) => {
  const jump = /Forward jump, standing.*1 m/
  const deck = await pageOf(browser, demo, phone)
  await signInAs(deck, demo, cove.emails.assistant)
  await openSkill(deck, jump)
  await deck.context().setOffline(true)
  await deck.getByRole('button', { name: 'Contact or bad landing' }).click()
  await soundToAxe(deck)
  await deck.getByRole('button', { name: 'Bad landing', exact: true }).click()
  await expect(deck.getByText('Recorded: bad landing.')).toBeVisible()
  await expect(deck.getByText(/paused at once.*Not sent yet/)).toBeVisible()
  await expect(deck.getByText('Tell the head coach now.')).toBeVisible()
  await soundToAxe(deck)
  await deck.getByRole('button', { name: 'Close' }).click()
  await expect(deck.getByText(/recorded on this phone, not sent yet: paused until/)).toBeVisible()
  await deck.getByRole('link', { name: /Back to Sunniva/ }).click()
  const closed = deck.getByRole('region', { name: 'Closed' })
  await expect(closed.getByText(/It rests on Forward jump, standing at 1 m\. Bad landing at/).first()).toBeVisible()
  await deck.context().setOffline(false)
  await expect(deck.getByRole('link', { name: /all sent/ })).toBeVisible({ timeout: 30_000 })
  await expect(closed.getByText(/Forward jump, standing at 1 m is paused by a bad landing/).first()).toBeVisible()

  const head = await pageOf(browser, demo, desk)
  await signInAs(head, demo, cove.emails.head)
  await head.goto('/desk/divers')
  await expect(head.getByText('incident to clear')).toBeVisible()
  await head.getByRole('link', { name: 'Sunniva Marsh' }).click()
  await head.getByRole('link', { name: 'Safety and consent' }).click()
  await expect(headline(head)).toHaveText('One incident waits to be cleared.')
  await head.getByText('Clear it in writing').click()
  await head.getByRole('button', { name: 'Clear it' }).click()
  await expect(alertIn(head)).toContainText('Say in writing what was done about it')
  await soundToAxe(head)
  await head.getByLabel('What was done about it, and why the diver may go on').fill('Looked at together; jumps first.')
  await head.getByRole('button', { name: 'Clear it' }).click()
  await expect(head.getByText('Cleared, and written in the ledger.')).toBeVisible()
  await expect(headline(head)).toHaveText('Nothing keeps Sunniva from diving.')

  await openSkill(deck, jump)
  await expect(deck.getByRole('button', { name: 'Call 3' })).toBeVisible()
  await expect(deck.getByText(/paused/)).toHaveCount(0)
})

test('a knock to the head keeps a diver out of the water until a head coach states that medical advice was followed', async ({
  browser,
  demo,
}) => {
  const office = await pageOf(browser, demo, desk)
  await signInAs(office, demo, cove.emails.assistant)
  await office.goto(`/desk/divers/${cove.diver}/safety`)
  await office.getByText('Record an incident').click()
  await office.getByLabel('What it was').selectOption('knock to the head')
  await office.getByRole('button', { name: 'Record it' }).click()
  await expect(alertIn(office)).toContainText('Choose the skill and the place.')
  await office.getByLabel('At what').selectOption({ label: 'Forward jump, standing at 1 m' })
  await office.getByRole('button', { name: 'Record it' }).click()
  await expect(office.getByText(/out of the water, the emergency plan, medical advice/).first()).toBeVisible()
  await expect(headline(office)).toContainText('Sunniva is stood down from the water')
  await expect(office.getByText('Clear it in writing')).toHaveCount(0)

  const head = await pageOf(browser, demo, desk)
  await signInAs(head, demo, cove.emails.head)
  await head.goto(`/desk/divers/${cove.diver}/safety`)
  await head.getByText('Clear it in writing').click()
  await head.getByLabel('What was done about it, and why the diver may go on').fill('Two weeks of rest.')
  await head.getByRole('button', { name: 'Clear it' }).click()
  await expect(alertIn(head)).toContainText('say in writing that medical advice was followed')
  await expect(head.getByLabel('What was done about it, and why the diver may go on')).toHaveValue('Two weeks of rest.')
  await head.getByLabel('That medical advice was followed').fill('Cleared by the club doctor on Monday.')
  await head.getByRole('button', { name: 'Clear it' }).click()
  await expect(headline(head)).toHaveText('Nothing keeps Sunniva from diving.')
  await head.getByText('1 cleared').click()
  await expect(head.getByText('“Cleared by the club doctor on Monday.”')).toBeVisible()
  await office.reload()
  await office.getByText('1 cleared').click()
  await expect(office.getByText('“Two weeks of rest.”')).toBeVisible()
  await expect(office.getByText('club doctor')).toHaveCount(0)
})

test('a stand-down closes the deck without its reason, and a consent withdrawn takes the video away', async ({
  browser,
  demo,
}) => {
  const head = await pageOf(browser, demo, desk)
  await signInAs(head, demo, cove.emails.head)
  await head.goto(`/desk/divers/${cove.diver}/safety`)
  await head.getByText('Stand Sunniva down').click()
  await head.getByLabel('Kept from').selectOption('boards')
  await head.getByLabel('Why').fill('A matter for the family.')
  await head.getByRole('button', { name: 'Stand down' }).click()
  await expect(headline(head)).toContainText('Sunniva is stood down from the boards')
  await expect(head.getByText('A matter for the family.')).toBeVisible()
  const video = head.getByRole('listitem').filter({ hasText: 'To link video' })
  await video.getByText('Withdraw it').click()
  await video.getByLabel('Who withdraws it').fill('Her father, by telephone')
  await video.getByRole('button', { name: 'Record the withdrawal' }).click()
  await expect(head.getByText('Recorded, and in force from now on.')).toBeVisible()
  await soundToAxe(head)

  const deck = await pageOf(browser, demo, phone)
  await signInAs(deck, demo, cove.emails.assistant)
  await deck.goto('/deck')
  await deck
    .getByRole('link', { name: /Sunniva/ })
    .first()
    .click()
  await expect(deck.getByRole('note').first()).toContainText('Sunniva is stood down from the boards')
  await openSkill(deck, /Fall-in, standing.*poolside/)
  await deck.getByRole('button', { name: 'Just watching' }).click()
  await deck.getByRole('link', { name: 'Note, video' }).click()
  await expect(deck.getByText('No consent to video of this diver is in force')).toBeVisible()
  await expect(deck.getByRole('button', { name: 'Add a video moment' })).toHaveCount(0)
  await expect(deck.getByText('A matter for the family.')).toHaveCount(0)
  await deck.goto(`/desk/divers/${cove.diver}/safety`)
  await expect(deck.getByText('Kept from the boards.')).toBeVisible()
  await expect(deck.getByText('A matter for the family.')).toHaveCount(0)
})
