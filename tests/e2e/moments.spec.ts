import AxeBuilder from '@axe-core/playwright'
import { type Cove, closeCove, makeCove } from './support/cove'
import { film, frameOf, filmLinks as links, rate, shownAt } from './support/film'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

// The range is a second long: a poll once a second would see the same frame for ever.
const often = { timeout: 15_000, intervals: [70] }

test.use({ expectedErrors: [/ERR_|Failed to load/] })

test('a moment plays in the page, step by frame; nobody else is asked before a click; what is gone is said to be', async ({
  page,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  const asked: string[] = []
  await page.route('https://films.invalid/**', (route) => {
    asked.push(route.request().url())
    return route.abort()
  })
  try {
    await page.setViewportSize({ width: 390, height: 844 })
    await signInAs(page, demo, cove.emails.head)
    const ids = await film(page, cove.diver, links)
    await page.goto(`/desk/divers/${cove.diver}/${encodeURIComponent('fall-in@poolside')}`)
    await page.locator(`a[href="/desk/moments/${ids.own}"]`).click()

    await expect.poll(async () => frameOf(await shownAt(page))).toBeGreaterThanOrEqual(0.5 * rate - 1)
    const onward = page.getByRole('button', { name: 'Frame on' })
    const back = page.getByRole('button', { name: 'Frame back' })
    await onward.click()
    await expect.poll(async () => frameOf(await shownAt(page)), { timeout: 15_000 }).toBeGreaterThan(0.5 * rate)
    let frame = frameOf(await shownAt(page))
    for (let count = 0; count < 8; count++) {
      await onward.click()
      frame += 1
      await expect.poll(async () => frameOf(await shownAt(page))).toBe(frame)
      expect(Math.abs((await shownAt(page)) - frame / rate)).toBeLessThan(0.002)
    }
    for (let count = 0; count < 5; count++) {
      await back.click()
      frame -= 1
      await expect.poll(async () => frameOf(await shownAt(page))).toBe(frame)
    }
    const player = page.locator('video')
    await player.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(frame + 1)
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    expect(await player.evaluate((film: HTMLVideoElement) => film.playbackRate)).toBe(0.125)
    await page.getByLabel('Speed').selectOption({ label: 'full speed' })
    // It loops: a second of film is over, and it plays on inside its range.
    await page.getByRole('button', { name: 'Play', exact: true }).click()
    await expect.poll(() => shownAt(page), often).toBeGreaterThan(1.3)
    await expect.poll(() => shownAt(page), often).toBeLessThan(0.9)
    await page.getByRole('button', { name: 'Pause' }).click()
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

    await page.goto(`/desk/moments/${ids.page}`)
    const away = page.getByRole('link', { name: 'Open 0.5 s to 1.5 s at films.invalid' })
    await expect(away).toHaveAttribute('href', `${links.page}#t=0.500,1.500`)
    await expect(page.locator('video')).toHaveCount(0)

    await page.goto(`/desk/moments/${ids.file}`)
    await expect(page.getByRole('button', { name: 'Play it here, from films.invalid' })).toBeVisible()
    expect(asked).toEqual([])
    await page.getByRole('button', { name: 'Play it here, from films.invalid' }).click()
    await expect(page.getByText('Evidence not reachable')).toBeVisible()
    expect(asked).toEqual([links.file])
  } finally {
    await closeCove(demo, cove)
  }
})

test('a second coach who looks blind has the same player', async ({ browser, page, demo }) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await (await browser.newContext({ baseURL: demo.url })).newPage()
    await signInAs(assistant, demo, cove.emails.assistant)
    // Its standard asks for a second coach.
    await film(assistant, cove.diver, links, { what: { skill: '101B', place: '1m', atLevel: 'soundings' } })
    await signInAs(page, demo, cove.emails.head)
    await page.goto('/desk/video')
    await page.locator('a[href^="/desk/video/"]').first().click()
    await expect(page.locator('video')).toHaveCount(1)
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(0.5 * rate)
    await expect(page.getByRole('button', { name: 'Play it here, from films.invalid' })).toBeVisible()
    await expect(page.getByRole('link', { name: /at films\.invalid/ })).toHaveCount(2)
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  } finally {
    await closeCove(demo, cove)
  }
})
