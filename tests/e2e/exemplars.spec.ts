import AxeBuilder from '@axe-core/playwright'
import type { Browser, Locator, Page } from '@playwright/test'
import type { DeckSnapshot } from '../../lib/assessment/deck/contract'
import { type Cove, closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { consentToExemplars, exemplarConsent, nameExemplar, naming as namingOf } from './support/exemplar'
import { film, filmLinks, frameOf, shownAt } from './support/film'
import { place, stepTo } from './support/measuring'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const skill = encodeURIComponent('fall-in@poolside')

async function pageOf(browser: Browser, demo: Demo, email: string) {
  const page = await (await browser.newContext({ baseURL: demo.url })).newPage()
  await signInAs(page, demo, email)
  return page
}

/** Marks a phase and measures an angle in a moment that begins at 0.7 s. */
async function workOn(coach: Page, moment: string): Promise<void> {
  await coach.goto(`/desk/moments/${moment}`)
  await expect.poll(async () => frameOf(await shownAt(coach))).toBe(42)
  await coach.locator('video').focus()
  await stepTo(coach, 45)
  await coach.keyboard.press('m')
  await expect(coach.getByText(/Kept: .* at 0\.750 s\./)).toBeVisible()
  await coach.getByRole('button', { name: /^Measure/ }).click()
  await coach.getByLabel('Measure', { exact: true }).selectOption({ label: 'Angle at the hip' })
  await place(coach, { shoulder: { x: 300, y: 200 }, hip: { x: 360, y: 280 }, ankle: { x: 300, y: 380 } })
  await coach.getByRole('button', { name: 'Keep this measure' }).click()
  await expect(coach.getByRole('list', { name: 'Measures that were kept' })).toContainText('Angle at the hip')
}

/** A look that is refused twice, with all that was marked still there; then kept, whole. `scale` is rated already. */
async function refusedThenKept(head: Page, scale: Locator): Promise<void> {
  const faults = head.getByRole('group', { name: 'Faults seen' }).getByRole('checkbox')
  const rest = head.getByLabel('As expected: what is not critical')
  const unseen = head.getByLabel('The video does not show the critical criteria')
  const send = head.getByRole('button', { name: 'Keep what I saw' })
  await faults.nth(0).check()
  await faults.nth(2).check()
  await rest.check()
  for (let time = 0; time < 2; time++) {
    await send.click()
    const refused = head.getByRole('alert').filter({ hasText: 'Not kept' })
    await expect(refused).toContainText('or say below that the video does not show it')
    await expect(scale.getByRole('radio', { name: /^3/ })).toBeChecked()
    expect(await faults.evaluateAll((all) => all.map((box) => box instanceof HTMLInputElement && box.checked))).toEqual(
      (await faults.all()).map((_, index) => index === 0 || index === 2),
    )
    await expect(rest).toBeChecked()
    await expect(unseen).not.toBeChecked()
  }
  const keys = await faults.evaluateAll((all) => all.map((box) => box.getAttribute('name')?.replace('fault:', '')))
  await unseen.check()
  await send.click()
  await expect(head).toHaveURL(/done=look/)
  const snapshot: DeckSnapshot = await (await head.request.get('/api/deck/snapshot')).json()
  expect(snapshot.recent.map(({ observation }) => observation)).toMatchObject([
    {
      observedOn: 'video',
      ratings: { 'hands-locked': 3 },
      restAsExpected: true,
      faults: [keys[0], keys[2]],
    },
  ])
}

test('a head coach names an exemplar, coaches see it in the guide, other clubs by consent; withdrawn, it is gone', async ({
  browser,
  page: head,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    await signInAs(head, demo, cove.emails.head)
    const { own } = await film(head, cove.diver, { own: filmLinks.own })
    const moment = `/desk/moments/${own}`
    await head.goto(moment)
    const naming = namingOf(head)
    await naming.getByRole('link', { name: 'Record the consent' }).click()
    await expect(head.getByRole('region', { name: 'Consent' })).toBeVisible()
    await consentToExemplars(head, cove.diver)
    const exemplar = exemplarConsent(head)
    await expect(exemplar.getByText('for the coaches of the club', { exact: false })).toBeVisible()

    await head.goto(moment)
    await naming.getByRole('button', { name: 'Name it as an exemplar' }).click()
    await expect(naming.getByText('Choose what it shows.').first()).toBeVisible()
    await naming.getByLabel('What it shows').selectOption('criterion:hands-locked')
    await naming.getByRole('button', { name: 'Name it as an exemplar' }).click()
    await expect(naming.getByText('“Hands locked, ears covered” at Soundings')).toBeVisible()
    expect((await new AxeBuilder({ page: head }).analyze()).violations).toEqual([])

    const assistant = await pageOf(browser, demo, cove.emails.assistant)
    const elsewhere = await pageOf(
      browser,
      demo,
      demo.signIns.find(({ role }) => role === 'assistant coach')?.email ?? '',
    )
    const guide = `/curriculum/${skill}`
    const seen = 'See it: Fall-in, standing at the poolside, as Soundings asks it'
    await assistant.goto(guide)
    expect(await assistant.locator('video').count()).toBe(0)
    await assistant.getByText(seen).click()
    await expect(assistant.locator('video')).toHaveCount(1)
    await expect(assistant.getByRole('link', { name: 'Its own page' })).toHaveAttribute('href', moment)
    expect((await new AxeBuilder({ page: assistant }).analyze()).violations).toEqual([])
    await elsewhere.goto(guide)
    await expect(elsewhere.getByText(seen)).toHaveCount(0)

    await head.goto(`/desk/divers/${cove.diver}/safety`)
    await exemplar.getByText('Change who may see them').click()
    await exemplar.getByLabel('Who may see them').selectOption('programme')
    await exemplar.getByLabel('Who gives it').fill('Her father, on the phone')
    await exemplar.getByRole('button', { name: 'Record the consent' }).click()
    await expect(exemplar.getByText('all clubs of the programme', { exact: false }).first()).toBeVisible()
    await elsewhere.reload()
    await elsewhere.getByText(seen).click()
    await expect(elsewhere.locator('video')).toHaveCount(1)
    await expect(elsewhere.getByRole('link', { name: 'Its own page' })).toHaveCount(0)
    const told = await elsewhere.content()
    for (const word of ['Sunniva', cove.name, cove.diver, own]) expect(told).not.toContain(word)
    // Families read this page too: of evidence and records it says nothing.
    await elsewhere.route('**/media/**', (route) => route.abort())
    await elsewhere.reload()
    await elsewhere.getByText(seen).click()
    await expect(elsewhere.getByText('The film could not be played here.')).toBeVisible()
    await expect(elsewhere.getByRole('list', { name: 'Exemplars' }).getByText(/Evidence|on the record/)).toHaveCount(0)

    await exemplar.getByText('Withdraw it').click()
    await exemplar.getByLabel('Who withdraws it').fill('Her father')
    await exemplar.getByRole('button', { name: 'Record the withdrawal' }).click()
    await expect(exemplar.getByText(/^Withdrawn on/)).toBeVisible()
    for (const page of [head, assistant, elsewhere]) {
      await page.goto(guide)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      await expect(page.getByText(seen)).toHaveCount(0)
    }
    await assistant.context().close()
    await elsewhere.context().close()
  } finally {
    await closeCove(demo, cove)
  }
})

test('an exemplar stands beside the rating scale of another attempt, never beside its own', async ({
  browser,
  page: head,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await pageOf(browser, demo, cove.emails.assistant)
    // Its standard asks for a second coach.
    const what = { skill: '101B', place: '1m', atLevel: 'soundings' }
    const first = await film(assistant, cove.diver, { own: filmLinks.own }, { what })
    const second = await film(assistant, cove.diver, { own: filmLinks.own }, { what, start: 0.7, end: 1.7 })
    await workOn(assistant, second.own)
    await signInAs(head, demo, cove.emails.head)
    await consentToExemplars(head, cove.diver)
    await nameExemplar(head, first.own, 'criterion:hands-locked')
    await expect(namingOf(head).getByText('“Hands locked, ears covered” at Bearings')).toBeVisible()

    // The other dive can be laid beside it.
    await head.goto(`/desk/moments/compare?moment=${second.own}`)
    const named = head
      .getByRole('list')
      .getByRole('listitem')
      .filter({ hasText: '“Hands locked, ears covered” at Bearings' })
    await named.getByRole('link').click()
    await expect(head).toHaveURL(new RegExp(`/desk/moments/compare.moment=${first.own}&moment=${second.own}`))

    await head.goto('/desk/video')
    const links = await head
      .locator('a[href^="/desk/video/"]')
      .evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''))
    expect(links).toHaveLength(2)
    const seen = head.getByText('See it: 101B at 1 m, as Bearings asks it')
    const shown: string[] = []
    for (const link of links) {
      await head.goto(link)
      await expect(head.getByRole('group', { name: 'Hands locked, ears covered' })).toBeVisible()
      if ((await seen.count()) > 0) shown.push(link)
      // Which of the two is looked at: the exemplar stands beside the other one.
      const own = (await seen.count()) === 0 ? '0.5 s to 1.5 s' : '0.7 s to 1.7 s'
      await expect(head.getByRole('region', { name: 'The moment' }).getByText(own).first()).toBeVisible()
    }
    expect(shown).toHaveLength(1)
    // Nothing of what the coach who rated it marked and measured there.
    await head.goto(shown[0] ?? '')
    await expect(head.getByRole('heading', { name: 'What you saw' })).toBeVisible()
    await head.getByRole('button', { name: /^Measure/ }).click()
    await expect(head.getByLabel('Measure', { exact: true })).toBeVisible()
    const kept = head.getByRole('list', { name: 'Measures that were kept' })
    await expect(kept.getByRole('listitem')).toHaveCount(0)
    await expect(head.getByText('0.750 s')).toHaveCount(0)
    expect(await head.content()).not.toContain('assistant of the cove')
    // What was rated before the film is looked at is still there after it.
    await head.goto(shown[0] ?? '')
    const scale = head.getByRole('group', { name: 'Hands locked, ears covered' })
    await scale.getByRole('radio', { name: /^3/ }).check()
    await seen.click()
    await expect(head.locator('video')).toHaveCount(2)
    await expect(scale.getByRole('radio', { name: /^3/ })).toBeChecked()
    expect((await new AxeBuilder({ page: head }).analyze()).violations).toEqual([])
    await refusedThenKept(head, scale)
    await assistant.context().close()
  } finally {
    await closeCove(demo, cove)
  }
})
