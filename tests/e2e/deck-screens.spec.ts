import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { chanceOf } from '../../seed/demo/chance'
import { closeCove, makeCove } from './support/cove'
import { signInAs } from './support/people'
import { rate } from './support/rater'
import { expect, test } from './support/test'

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, expectedErrors: [/ERR_FAILED/] })

/** What axe finds in both themes, and whatever is smaller than a wet thumb needs. */
async function expectSound(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => `${colorScheme} ${id} ${nodes[0]?.html}`)).toEqual([])
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth)
  expect(wide).toBeLessThanOrEqual(390)
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('.deck-page :is(a, button), .deck-rating :is(a, button), .deck-top a')].flatMap(
      (target) => {
        const { width, height } = target.getBoundingClientRect()
        return height > 0 && Math.min(width, height) < 47.5 ? [`${target.textContent} ${width} × ${height}`] : []
      },
    ),
  )
  expect(small).toEqual([])
}

test('axe finds nothing on any screen of the deck, and every target is 48 px or more', async ({
  page,
  context,
  demo,
}) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto('/deck')
    await expect(page.getByRole('link', { name: /Sunniva/ })).toBeVisible()
    await expectSound(page)
    await page.getByRole('link', { name: /^Plan today/ }).click()
    await expect(page.getByRole('checkbox', { name: /Sunniva/ })).toBeVisible()
    await expectSound(page)
    await page.goto('/deck#/')
    await page.getByRole('link', { name: /Sunniva/ }).click()
    await expect(page.getByLabel('Find a skill')).toBeVisible()
    await expectSound(page)

    const pool = `/deck#/diver/${cove.diver}/fall-in@poolside`
    await page.goto(pool)
    await expect(page.getByRole('heading', { name: 'How many of the next attempts count?' })).toBeVisible()
    await expectSound(page)
    await context.route('**/api/deck/sync', (route) => route.abort())
    await rate(page, chanceOf('deck screens'))
    await expectSound(page)
    await page.getByRole('button', { name: 'Contact or bad landing' }).click()
    await expectSound(page)
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Rest as expected · keep' }).click()
    await expect(page.getByRole('heading', { name: 'Critical, and not rated yet' })).toBeVisible()
    await expectSound(page)
    await page.keyboard.press('Escape')
    await page.goto(`${pool}/more`)
    await page.getByRole('button', { name: 'Add a video moment' }).or(page.getByLabel('Note')).first().waitFor()
    await expectSound(page)

    await page.goto('/deck#/seen')
    await page
      .getByRole('link', { name: /Sunniva.*unsent/ })
      .first()
      .click()
    await expect(page.getByRole('button', { name: 'Correct it' })).toBeVisible()
    await expectSound(page)
    await page.goto('/deck#/seen')
    await expect(page.getByRole('heading', { name: 'What you saw lately' })).toBeVisible()
    await expectSound(page)
    await page.goto('/deck#/unsent')
    await expect(page.getByRole('button', { name: 'Send now' })).toBeVisible()
    await expectSound(page)
  } finally {
    await closeCove(demo, cove)
  }
})
