import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { trueDive } from '../../seed/clips/true-dive'
import { type Cove, closeCove, makeCove } from './support/cove'
import { film, frameOf, shownAt } from './support/film'
import { place, stepTo } from './support/measuring'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const inward = { skill: '401B', place: '1m', atLevel: 'soundings' }
const dive = trueDive('401b-open-pike')
const start = Math.floor((dive.highest / 60) * 10) / 10

/** Marks the highest point and measures the hip there, on whatever page the film stands. */
async function measureThePike(page: Page): Promise<void> {
  await expect.poll(async () => frameOf(await shownAt(page))).toBe(Math.round(start * 60))
  await page.locator('video').focus()
  await stepTo(page, dive.highest)
  await page.keyboard.press('5')
  await expect(page.getByRole('status').filter({ hasText: 'Kept: highest point' })).toBeVisible()
  await page.getByRole('button', { name: /^Measure/ }).click()
  await page.getByLabel('Measure', { exact: true }).selectOption({ label: 'Angle at the hip' })
  const { shoulder, hip, ankle } = dive.points(dive.highest)
  await place(page, { shoulder, hip, ankle })
  await page.getByRole('button', { name: 'Keep this measure' }).click()
  await expect(page.getByRole('status').filter({ hasText: 'Kept: Angle at the hip.' })).toBeVisible()
}

test('a measure suggests a rating and gives none, beside the scale of who looks blind and on the page of the moment', async ({
  page,
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await (await browser.newContext({ baseURL: demo.url })).newPage()
    await signInAs(assistant, demo, cove.emails.assistant)
    const { own } = await film(assistant, cove.diver, { own: dive.link }, { what: inward, start, end: 2.6 })
    await assistant.context().close()

    await page.setViewportSize({ width: 1440, height: 900 })
    await signInAs(page, demo, cove.emails.head)
    await page.goto('/desk/video')
    await page.locator('a[href^="/desk/video/"]').first().click()
    await expect(page.getByRole('heading', { name: 'What you saw' })).toBeVisible()
    await expect(page.getByText(/suggests/)).toHaveCount(0)

    // What was chosen in the form stays while she measures.
    const pike = page.getByRole('group', { name: 'Pike closed, legs straight' }).getByRole('radio', { name: /^3/ })
    await pike.check({ force: true })
    await measureThePike(page)
    await expect(page.getByText(/^Your measure: suggests 2, perhaps 1\.$/)).toHaveCount(1)
    await expect(pike).toBeChecked()
    const kept = page.getByRole('list', { name: 'Measures that were kept' })
    await expect(kept.getByText('You')).toBeVisible()
    await expect(page.getByText(/; (not )?rated/)).toHaveCount(0)
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

    await page.goto(`/desk/moments/${own}`)
    await page.getByRole('button', { name: /^Measure/ }).click()
    await expect(page.getByText('“Pike closed, legs straight”: suggests 2, perhaps 1; not rated.')).toBeVisible()
  } finally {
    await closeCove(demo, cove)
  }
})
