import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { chanceOf } from '../../seed/demo/chance'
import { type Cove, closeCove, makeCove } from './support/cove'
import { whoseRecords } from './support/device'
import { faults, rating, type Trouble } from './support/faults'
import { listFilmed } from './support/filmed'
import { startOwnServer } from './support/own-server'
import { signInAs } from './support/people'
import { openPhone } from './support/phone'
import { allSent, expectExactly, keptLine, mark, pressKeep, type Rated } from './support/rater'
import { expect, test } from './support/test'

const skill = 'fall-in'
const atPool = (cove: Cove) => `/deck#/diver/${cove.diver}/${skill}@poolside`
const film = (name: string) => `https://films.invalid/${name}.mp4`

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_CONNECTION_REFUSED|401|503/],
})

const filmedNow = (page: Page) => page.getByRole('button', { name: 'Filmed now' })

/** Rates one attempt that was filmed, by one tap. */
async function rateFilmed(page: Page, chance: ReturnType<typeof chanceOf>): Promise<Rated> {
  await expect(page.getByRole('button', { name: 'Call 5' }).or(filmedNow(page))).toBeVisible()
  const ratings = await mark(page, chance)
  // By the keyboard: a thumb so fast on one spot would be taken for one that tapped twice.
  await filmedNow(page).press('Enter')
  await expect(page.getByRole('button', { name: /^Filmed: clip/ })).toBeVisible()
  await pressKeep(page, true)
  await expect(keptLine(page)).toBeVisible()
  return { ratings, rest: true }
}

async function expectSound(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([])
  }
  const { width } = page.viewportSize() ?? { width: 0 }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
}

test('“Filmed now” is one tap, counts up, is undone with the attempt, and outlives a phone without a network that is killed', async ({
  demo,
}) => {
  const chance = chanceOf('filmed')
  const cove = makeCove(demo)
  const server = await startOwnServer(demo)
  const phone = await openPhone(server.url)
  const rated: Rated[] = []
  const remember = (one: Rated) => rated.push(one)
  try {
    await signInAs(phone.page(), demo, cove.emails.assistant)
    await phone.reopen()
    await phone.page().goto(atPool(cove))
    await phone.page().waitForFunction(() => navigator.serviceWorker.controller !== null)
    await mark(phone.page(), chance)
    await filmedNow(phone.page()).click()
    const undo = phone.page().getByRole('button', { name: 'Undo' })
    await expect(phone.page().getByText('It counts as video once it is linked at the desk.')).toBeVisible()
    await undo.press('Enter')
    await expect(filmedNow(phone.page())).toBeVisible()
    // The camera stands at 12: put right by thumb, no typing.
    await filmedNow(phone.page()).press('Enter')
    await expect(phone.page().getByRole('button', { name: 'Filmed: clip 1' })).toBeVisible()
    for (let clip = 1; clip < 12; clip++)
      await phone.page().getByRole('button', { name: 'Clip number up' }).press('Enter')
    await expect(phone.page().getByRole('button', { name: 'Filmed: clip 12' })).toBeVisible()
    await expectSound(phone.page())
    await pressKeep(phone.page(), true)
    await expect(keptLine(phone.page())).toBeVisible()
    await allSent(phone.page())
    expect(await listFilmed(demo, cove.diver)).toEqual([12])

    const rateSome = async (count: number) => {
      for (let index = 0; index < count; index++) remember(await rateFilmed(phone.page(), chance))
    }
    const trouble: Trouble = { demo, server, phone, diver: cove.diver, chance, rateSome, remember }
    const clips = [12]
    for (const name of [
      'the network is cut',
      'the browser is killed with unsent ratings',
      'the server is killed in the middle of a batch',
    ])
      await test.step(name, async () => {
        await faults[name]?.(trouble, 2)
        await allSent(phone.page())
        clips.push(...[1, 2].map((by) => (clips.at(-1) ?? 0) + by))
        expect(await listFilmed(demo, cove.diver)).toEqual(clips)
      })
    await rating(phone, chance, remember)(1)
    await allSent(phone.page())
    expect(await listFilmed(demo, cove.diver)).toEqual(clips)
    expect(phone.thrown).toEqual([])
    expect(rated).toHaveLength(7)
  } finally {
    await phone.close()
    await server.kill()
    await closeCove(demo, cove)
  }
})

test('what was filmed waits at the desk, is linked one by one or from a pasted list, and nobody else sees it', async ({
  page,
  browser,
  demo,
}) => {
  const chance = chanceOf('filmed at the desk')
  const cove = makeCove(demo)
  const stranger = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto(atPool(cove))
    const rated: Rated[] = []
    for (let count = 0; count < 4; count++) rated.push(await rateFilmed(page, chance))
    await allSent(page)
    await page.goto('/deck#/seen')
    await expect(page.getByText('4 attempts wait for their clip.')).toBeVisible()
    await expect(page.getByText(/clip 4 waits for its link/)).toBeVisible()
    await expectSound(page)
    await page.getByRole('link', { name: 'Link them at the desk' }).click()
    await expect(page.getByRole('heading', { name: '4 attempts wait for their clip.' })).toBeVisible()
    await expectSound(page)

    const other = await (await browser.newContext({ baseURL: demo.url })).newPage()
    await signInAs(other, demo, stranger.emails.head)
    await other.goto('/desk/clips')
    await expect(other.getByRole('heading', { name: 'No attempt waits for its clip.' })).toBeVisible()

    const first = page.getByRole('listitem').filter({ hasText: 'clip 1 ·' })
    await first.getByText('Link its clip…').click()
    await first.getByLabel('Link of the clip').fill('films.invalid/one')
    await first.getByLabel('From').fill('12')
    await first.getByRole('button', { name: 'Link it' }).click()
    await expect(first.getByText('This is not a web address.')).toBeVisible()
    await expect(first.getByLabel('From')).toHaveValue('12')
    await first.getByLabel('Link of the clip').fill(`${film('one')}#t=2,6.5`)
    await first.getByLabel('From').fill('')
    await first.getByRole('button', { name: 'Link it' }).click()
    await expect(page.getByText('Linked: it counts as a video moment from now on.')).toBeVisible()
    await expect(page.getByRole('heading', { name: '3 attempts wait for their clip.' })).toBeVisible()

    const second = page.getByRole('listitem').filter({ hasText: 'clip 2 ·' })
    await second.getByText('Not filmed…').click()
    await second.getByRole('button', { name: 'It was not filmed after all' }).click()
    await expect(page.getByText('Taken off the list')).toBeVisible()

    const session = (await page.getByRole('link', { name: 'Link a list of clips' }).getAttribute('href')) ?? ''
    expect((await other.request.get(session)).status()).toBe(404)
    await page.getByRole('link', { name: 'Link a list of clips' }).click()
    const list = page.getByLabel('Clips, one a line')
    await list.fill(`${film('three')} clip 3\n${film('four')} soon`)
    await page.getByRole('button', { name: 'Propose' }).click()
    await expect(page.getByText(/Line 2: "soon" is neither a clip number nor a time of day/).first()).toBeVisible()
    await expect(list).toHaveValue(/soon/)
    await list.fill(`${film('three')} clip 3\n${film('x')} clip 40`)
    await page.getByRole('button', { name: 'Propose' }).click()
    await expect(page.getByRole('heading', { name: '1 of 2 dives has a clip' })).toBeVisible()
    await expect(page.getByText('By its number.')).toBeVisible()
    await expect(page.getByText('No clip is near it.')).toBeVisible()
    await expect(page.getByText('Line 2 of the list is not proposed for any dive.')).toBeVisible()
    await expectSound(page)
    // A list that was changed since is proposed anew before anything of it is linked.
    await list.fill(`${film('three')} clip 3\n${film('four')} clip 4`)
    await page.getByRole('button', { name: 'Link what is chosen' }).click()
    await expect(page.getByText('The list was changed')).toBeVisible()
    await expect(page.getByRole('heading', { name: '2 of 2 dives have a clip' })).toBeVisible()
    await page.getByRole('button', { name: 'Link what is chosen' }).click()
    await expect(page.getByText('There were 2 of them.')).toBeVisible()
    await expect(page.getByRole('heading', { name: 'No attempt waits for its clip.' })).toBeVisible()

    await page.goto(`/desk/divers/${cove.diver}/${encodeURIComponent(`${skill}@poolside`)}`)
    await expect(page.locator('a[href^="/desk/moments/"]')).toHaveCount(3)
    await expectExactly(demo, cove.diver, skill, rated)
    await page.goto('/deck#/seen')
    await expect(page.getByText(/waits? for (its|their) clip/)).toBeHidden()
    await other.context().close()
  } finally {
    await closeCove(demo, cove)
    await closeCove(demo, stranger)
  }
})

test('the second coach on a phone sees no mark of the first, and her counter is her own', async ({
  page,
  context,
  demo,
}) => {
  const chance = chanceOf('filmed by two')
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto(atPool(cove))
    await context.route('**/api/deck/sync', (route) => route.abort())
    await rateFilmed(page, chance)
    await expect(page.getByRole('link', { name: /3 unsent/ })).toBeVisible()
    page.once('dialog', (dialog) => void dialog.accept())
    await page.goto('/desk/divers')
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.waitForURL('**/account/sign-in')
    await context.unroute('**/api/deck/sync')
    await signInAs(page, demo, cove.emails.head)
    await page.goto('/deck#/seen')
    await expect(page.getByRole('heading', { name: 'What you saw lately' })).toBeVisible()
    await expect(page.getByText(/clip 1/)).toBeHidden()
    await page.goto(atPool(cove))
    await mark(page, chance)
    await filmedNow(page).click()
    await expect(page.getByRole('button', { name: 'Filmed: clip 1' })).toBeVisible()
    await expect.poll(() => whoseRecords(page)).toMatchObject({ outbox: [cove.assistant], snapshots: [cove.head] })
  } finally {
    await closeCove(demo, cove)
  }
})
