import { closeCove, makeCove } from './support/cove'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, expectedErrors: [/ERR_INTERNET_DISCONNECTED/] })

test('a plan of the day: who is here, what is suggested, one tap to it, without a network, and again tomorrow', async ({
  page,
  context,
  demo,
}) => {
  const cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    await page.goto('/deck')
    await page.getByRole('link', { name: /^Plan today/ }).click()
    // The one thing that this diver's level waits for is suggested, with its reason.
    const ofHer = page.getByRole('listitem').filter({ hasText: 'Sunniva Marsh' })
    const suggested = ofHer.getByRole('button', { name: /Fall-in, standing.*poolside/ })
    await expect(page.getByText(/Soundings is .* away\./)).toBeVisible()
    await suggested.click()
    await expect(suggested).toHaveAttribute('aria-pressed', 'true')
    await page.getByLabel('Find a skill').fill('101C')
    await page.getByRole('region', { name: 'For everybody' }).getByRole('button', { name: /101C/ }).first().click()
    await expect(page.getByText('Kept on this phone.')).toBeVisible()

    await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    await context.setOffline(true)
    await page.goto('/deck#/')
    await page.reload()
    await expect(page.getByRole('link', { name: /101C/ })).toBeVisible()
    await page.getByRole('link', { name: /^Fall-in, standing/ }).click()
    await expect(page.getByRole('heading', { name: 'How many of the next attempts count?' })).toBeVisible()

    await page.goto('/deck#/')
    await page.getByRole('link', { name: 'Change today’s plan' }).click()
    await page.getByRole('checkbox', { name: 'Sunniva Marsh' }).uncheck()
    await page.getByRole('link', { name: 'To the divers', exact: true }).click()
    await expect(page.getByText('Not here today: Sunniva.')).toBeVisible()

    await page.clock.setFixedTime(Date.now() + 26 * 3_600_000)
    await page.reload()
    await page.getByRole('link', { name: /^Plan today/ }).click()
    await expect(page.getByRole('checkbox', { name: 'Sunniva Marsh' })).toBeChecked()
    await page.getByRole('button', { name: /^Copy what was watched/ }).click()
    await expect(suggested).toHaveAttribute('aria-pressed', 'true')
    await context.setOffline(false)
  } finally {
    await closeCove(demo, cove)
  }
})
