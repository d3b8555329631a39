import type { Browser, Page } from '@playwright/test'
import { type Cove, closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { film, filmLinks } from './support/film'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const phone = { width: 390, height: 844 }
const desk = { width: 1440, height: 900 }

const pageOf = async (browser: Browser, demo: Demo, viewport: { width: number; height: number }): Promise<Page> =>
  (await browser.newContext({ baseURL: demo.url, viewport })).newPage()

/** Calls three fall-ins from the poolside and rates each a 4 wherever it must be rated, the rest as expected. */
async function rateThree(page: Page): Promise<void> {
  await page.goto('/deck')
  await page
    .getByRole('link', { name: /Sunniva/ })
    .first()
    .click()
  await page
    .getByRole('link', { name: /Fall-in, standing.*poolside/ })
    .first()
    .click()
  await page.getByRole('button', { name: 'Call 3' }).click()
  for (let attempt = 0; attempt < 3; attempt++) {
    const critical = page.getByRole('region', { name: 'Must be rated' })
    const keep = page.getByRole('button', { name: 'Rest as expected · keep' })
    const four = critical.getByRole('radio', { name: /^4/ })
    // Rating one brings up the next; the last one stays, rated. Two clicks on a spot in quick succession count once.
    await expect(async () => {
      if (!(await four.isChecked())) await four.click()
      await expect(four).toBeChecked({ timeout: 200 })
    }).toPass()
    await keep.click()
    await expect(page.getByText(/^Kept\./)).toBeVisible()
  }
  await expect(page.getByRole('link', { name: /all sent/ })).toBeVisible()
}

test('from what a coach saw to a signed advancement and the region’s row', async ({ browser, demo }) => {
  const cove: Cove = makeCove(demo)
  try {
    const deck = await pageOf(browser, demo, phone)
    await signInAs(deck, demo, cove.emails.assistant)
    await rateThree(deck)

    // The standard is reached: the assistant signs it off.
    await deck.goto(`/desk/divers/${cove.diver}`)
    await expect(deck.getByRole('region', { name: 'To sign' })).toContainText('Fall-in, standing')
    await deck.goto(`/desk/divers/${cove.diver}/${encodeURIComponent('fall-in@poolside')}`)
    await deck.getByRole('button', { name: 'Sign off' }).click()
    await expect(deck.getByText('Kept, and written in the ledger.')).toBeVisible()

    // The region sees a diver without a level who is ready.
    const region = await pageOf(browser, demo, desk)
    const reviewer = demo.signIns.find(({ role }) => role === 'programme reviewer')
    await signInAs(region, demo, reviewer?.email ?? '')
    await region.goto(`/region?club=${cove.club}`)
    const row = (step: string) => region.getByRole('row', { name: new RegExp(`^${step}`) })
    await expect(row('no level yet')).toHaveText(/no level yet\s*1\s*1/)
    await expect(row('Soundings')).toHaveText(/Soundings\s*0/)

    // The head coach reads why, and approves.
    const head = await pageOf(browser, demo, desk)
    await signInAs(head, demo, cove.emails.head)
    await expect(head.getByRole('heading', { level: 1 })).toHaveText('One step is ready for your decision.')
    await head.getByRole('link', { name: 'Sunniva Marsh' }).click()
    await expect(head.getByRole('heading', { level: 1 })).toHaveText('Sunniva is ready for Soundings.')
    await head.getByText('Approve…').click()
    await head.getByRole('button', { name: 'Approve', exact: true }).click()
    await expect(head.getByText('Approved, and written in the ledger.')).toBeVisible()
    await expect(head.getByRole('heading', { level: 1 })).toHaveText('Nobody waits for a decision.')

    // The region's count has moved, and the diver's page says why she is not ready for the next one.
    await region.reload()
    await expect(row('no level yet')).toHaveText(/no level yet\s*0/)
    await expect(row('Soundings')).toHaveText(/Soundings\s*1/)
    await head.goto(`/desk/divers/${cove.diver}`)
    await expect(head.getByRole('heading', { level: 1 })).toContainText('away from Bearings')
  } finally {
    await closeCove(demo, cove)
  }
})

test('a return needs a reason, keeps what was typed, and takes the step from the queue', async ({ browser, demo }) => {
  const page = await pageOf(browser, demo, desk)
  const head = demo.signIns.find(({ role }) => role === 'head coach')
  await signInAs(page, demo, head?.email ?? '')
  await page.goto('/desk/queue')
  const first = page.getByRole('region', { name: 'Ready' }).getByRole('link').first()
  await first.click()
  await page.getByText('Return…').click()
  const form = page.locator('form', { has: page.getByRole('button', { name: 'Return with this reason' }) })
  await form.getByLabel('Reason').fill('   ')
  const more = form.getByRole('group', { name: 'Wants more of' }).getByRole('checkbox')
  await more.nth(0).check()
  await more.nth(1).check()
  for (let time = 0; time < 2; time++) {
    await form.getByRole('button', { name: 'Return with this reason' }).click()
    await expect(form.getByRole('alert')).toContainText('Say in writing why')
    expect(await more.evaluateAll((all) => all.map((box) => box instanceof HTMLInputElement && box.checked))).toEqual(
      (await more.all()).map((_, index) => index < 2),
    )
  }
})

test('a signature by override keeps what was waived, each time that it is refused', async ({ page, demo }) => {
  const cove: Cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.head)
    await film(page, cove.diver, { own: filmLinks.own }, { good: true })
    await page.goto(`/desk/divers/${cove.diver}/${encodeURIComponent('fall-in@poolside')}`)
    await page.getByText('Sign by override').first().click()
    const waived = page.getByRole('group', { name: 'What you waive' })
    const ticked = ['a second coach', 'a second day', 'certainty', 'the count']
    for (const label of ticked) await waived.getByLabel(label).check()
    // Only an override wants a reason; and none brings the count down to the one dive that there is.
    for (const [reason, refusal] of [
      ['   ', 'Say in writing why you sign by override'],
      ['Seen on another coast.', 'still wants one clean attempt'],
    ] as const) {
      await page.getByLabel('Reason').fill(reason)
      await page.getByRole('button', { name: 'Sign by override' }).click()
      await expect(page.getByRole('alert').filter({ hasText: 'Not signed' })).toContainText(refusal)
      for (const label of ticked) await expect(waived.getByLabel(label)).toBeChecked()
      await expect(waived.getByLabel('a moment on video')).not.toBeChecked()
    }
    await expect(page.getByLabel('Reason')).toHaveValue('Seen on another coast.')
  } finally {
    await closeCove(demo, cove)
  }
})
