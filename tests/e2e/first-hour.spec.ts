import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import pg from 'pg'
import { v7 as uuidv7 } from 'uuid'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const names = ['Ada', 'Bo', 'Cai', 'Dov', 'Eli', 'Fia', 'Gus', 'Hal', 'Ida', 'Jon', 'Kit', 'Lou']
const password = 'a towel on the third rail'

/** A club of this test's own; leaks.spec.ts passes over clubs of this name. */
const tag = uuidv7().slice(-6)
const clubName = `Cove Hour ${tag}`

async function asOwner<T>(demo: Demo, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

test.afterAll(async ({ demo }) => {
  await asOwner(demo, async (client) => {
    const { rows } = await client.query('SELECT "id" FROM "Club" WHERE "name" = $1', [clubName])
    for (const table of ['Membership', 'DiverMembership'])
      await client.query(`UPDATE "${table}" SET "to" = now() WHERE "clubId" = $1 AND "to" IS NULL`, [rows[0]?.id])
  })
})

const linkOn = (page: Page) => page.getByText(/\/account\/invited\/[\w-]{43}$/)

// The framework announces each page in an alert of its own.
const alertOn = (page: Page, text: string) => page.getByRole('alert').filter({ hasText: text })

async function soundToAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
}

/** Opens a link without a sign-in and makes the account. */
async function join(page: Page, link: string, name: string, email: string): Promise<void> {
  await page.goto(link)
  await soundToAxe(page)
  await page.getByLabel('Your name').fill(name)
  await page.getByLabel('Initials').fill(name.slice(0, 2))
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password', { exact: true }).fill(password)
  await page.getByLabel('The password again').fill(password)
  await page.getByRole('button', { name: 'Accept' }).click()
  await page.waitForURL((url) => !url.pathname.startsWith('/account/'))
}

test('a club begins: link, account, squad, twelve divers, what they hold', async ({ browser, demo }) => {
  const lead = demo.signIns.find(({ role }) => role.includes('lead'))
  const office = await (await browser.newContext({ baseURL: demo.url })).newPage()
  await signInAs(office, demo, lead?.email ?? '')
  await office.goto('/region/clubs')
  await office.getByLabel('Name').fill(clubName)
  await office.getByRole('button', { name: 'Add the club' }).click()
  await office.waitForURL('**/region/clubs?done=club')
  await expect(office.getByText('The club is there.')).toBeVisible()
  await office.getByRole('region', { name: 'Invite a head coach' }).getByLabel('Club').selectOption(clubName)
  await office.getByRole('region', { name: 'Invite a head coach' }).getByLabel('For whom').fill('Nella')
  await office.getByRole('region', { name: 'Invite a head coach' }).getByRole('button').click()
  const link = (await linkOn(office).textContent()) ?? ''
  await soundToAxe(office)
  await office.context().close()

  const context = await browser.newContext({ baseURL: demo.url })
  const page = await context.newPage()
  await page.goto(link)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    new RegExp(`invites you to be head coach of ${clubName}`),
  )
  await join(page, link, 'Nella Quay', `nella-${tag}@cove.example`)
  await expect(page.getByText(`head coach, ${clubName}`)).toBeVisible()
  const second = await (await browser.newContext({ baseURL: demo.url })).newPage()
  await second.goto(link)
  await expect(second.getByRole('heading', { level: 1 })).toHaveText(/used already/)

  await page.getByRole('link', { name: 'Squads' }).click()
  await page.getByLabel('Name').fill('Tuesday')
  await page.getByRole('button', { name: 'Make the squad' }).click()
  await page.waitForURL(/\/desk\/squads\/[0-9a-f-]{36}$/)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Tuesday: who is in it.')
  await page.getByRole('link', { name: 'Squads' }).click()
  await page.getByRole('link', { name: 'Enter divers' }).click()
  const lines = names.map((name, index) => `${name}, Quay${tag}, 2012-${String(index + 1).padStart(2, '0')}-15`)
  const wrong = [...lines.slice(0, 11), `Lou, Quay${tag}, 15.12.2012`].join('\n')
  await page.getByLabel('Divers').fill(wrong)
  await page.getByRole('button', { name: 'Enter them' }).click()
  await expect(alertOn(page, 'Line 12: "15.12.2012" is not a date')).toBeVisible()
  await expect(page.getByLabel('Divers')).toHaveValue(wrong)
  await soundToAxe(page)
  await page.getByLabel('Divers').fill(lines.join('\n'))
  await page.getByRole('button', { name: 'Enter them' }).click()
  await page.waitForURL(/done=divers/)
  await expect(page.getByText('12 are entered.')).toBeVisible()
  await soundToAxe(page)

  await page.getByRole('link', { name: 'recognised next' }).click()
  const ticks = page.getByRole('checkbox', { name: /deep water/i })
  await expect(ticks).toHaveCount(12)
  for (const tick of await ticks.all()) await tick.check()
  await page.getByRole('button', { name: 'Recognise what is ticked' }).click()
  await expect(alertOn(page, 'on what the recognition rests')).toBeVisible()
  await expect(ticks.first()).toBeChecked()
  await page.getByLabel('On what it rests').fill('All twelve trod water for me in the deep tank in September.')
  await page.getByRole('button', { name: 'Recognise what is ticked' }).click()
  await page.waitForURL(/done=12/)
  await expect(page.getByText('12 recognised, each written in the ledger')).toBeVisible()
  await expect(page.getByRole('link', { name: 'recognised', exact: true })).toHaveCount(12)
  await soundToAxe(page)
  await page.getByRole('link', { name: 'recognised', exact: true }).first().click()
  await expect(page.getByText('“All twelve trod water for me')).toBeVisible()
  await soundToAxe(page)

  await page.getByRole('link', { name: 'People' }).click()
  await page.getByLabel('For whom').fill('Odo')
  await page.getByRole('button', { name: 'Make the link' }).click()
  const coachLink = (await linkOn(page).textContent()) ?? ''
  await soundToAxe(page)
  await join(second, coachLink, 'Odo Reef', `odo-${tag}@cove.example`)
  await expect(
    second
      .getByRole('heading', { name: /Tuesday/ })
      .or(second.getByText('Tuesday'))
      .first(),
  ).toBeVisible()
  await page.getByRole('link', { name: 'People' }).click()
  await page.getByRole('link', { name: 'Change or end of the post of Odo Reef' }).click()
  await page.getByLabel('forward', { exact: true }).uncheck()
  await soundToAxe(page)
  await page.getByRole('button', { name: 'Keep the scope' }).click()
  await page.waitForURL(/done=scope/)
  await expect(page.getByText('Odo Reef', { exact: true })).toBeVisible()
  await expect(page.getByText(/judges (?!.*forward.*;)safety.*; /)).toBeVisible()
  await page.getByRole('link', { name: 'Change or end of the post of Odo Reef' }).click()
  await page.getByText('End it').click()
  await page.getByRole('button', { name: 'End the post of Odo Reef' }).click()
  await page.waitForURL(/done=ended/)
  await expect(page.getByText('The post is ended')).toBeVisible()
  expect((await second.request.get('/api/deck/snapshot')).status()).not.toBe(200)
  await second.context().close()
  await context.close()
})
