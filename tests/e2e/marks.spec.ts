import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { type Cove, closeCove, makeCove } from './support/cove'
import { mark } from './support/duo'
import { film, frameOf, rate, shownAt } from './support/film'
import { signInAs } from './support/people'
import { inPieces } from './support/slow-film'
import { expect, test } from './support/test'

const inward = { what: { skill: '401B', place: '1m', atLevel: 'soundings' }, start: 0.3, end: 2.5 }
const links = { own: '/media/clips/401b-open-pike.webm' }

const pressUntil = async (page: Page, key: string, frame: number) => {
  for (let presses = 0; presses < 200 && frameOf(await shownAt(page)) !== frame; presses++) {
    const before = await shownAt(page)
    await page.keyboard.press(key)
    await expect.poll(() => shownAt(page), { intervals: [20], timeout: 15_000 }).not.toBe(before)
  }
  expect(frameOf(await shownAt(page))).toBe(frame)
}
const said = (page: Page) => page.getByRole('status').filter({ hasText: /Kept|Taken back/ })
const row = (page: Page, key: string) => page.locator('.marks-list tr').filter({ hasText: key })

test('a coach marks by keys alone, frame by frame; a second one marks too, and both see by how much they differ', async ({
  page,
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    const { own } = await film(page, cove.diver, links, inward)
    await page.goto(`/desk/moments/${own}`)
    await expect.poll(async () => frameOf(await shownAt(page))).toBeGreaterThan(16)
    await page.locator('video').focus()
    await page.keyboard.press('m')
    await expect(said(page)).toHaveText('Kept: stance at 0.300 s.')
    await pressUntil(page, 'ArrowRight', 24)
    await page.keyboard.press('4')
    await expect(said(page)).toHaveText('Kept: flight at 0.400 s.')
    await pressUntil(page, 'ArrowRight', 27)
    await page.keyboard.press('3')
    await expect(said(page)).toHaveText('Kept: take-off at 0.450 s.')
    await expect(page.getByText('“take-off” (0.450 s) does not come before “flight” (0.400 s).')).toBeVisible()

    // From the button of a phase the keys still step.
    const entry = page.getByRole('button', { name: 'Mark entry' })
    await entry.focus()
    await pressUntil(page, 'ArrowRight', 29)
    await page.keyboard.press('Enter')
    await expect(said(page)).toHaveText('Kept: entry at 0.483 s.')
    await page.getByRole('button', { name: 'Go to stance, 0.300 s' }).press('Enter')
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(18)
    await page.getByRole('button', { name: 'Go to entry, 0.483 s' }).press('Enter')
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(29)

    await page.getByRole('button', { name: 'Take back take-off' }).press('Enter')
    await expect(said(page)).toHaveText('Taken back: take-off.')
    await expect(page.getByText('does not come before')).toHaveCount(0)
    await expect(page.getByRole('button', { name: 'Go to take-off' })).toHaveCount(0)
    await page.reload()
    await expect(row(page, 'entry')).toContainText('0.483 s')
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true })
    const head = await context.newPage()
    await signInAs(head, demo, cove.emails.head)
    await head.goto(`/desk/moments/${own}`)
    await expect(row(head, 'entry')).not.toContainText('0.483 s')
    await head.getByRole('button', { name: 'Frame on' }).tap()
    await expect.poll(async () => frameOf(await shownAt(head))).toBe(19)
    await head.getByRole('button', { name: 'Mark entry' }).tap()
    await expect(said(head)).toHaveText('Kept: entry at 0.317 s.')
    const beside = head.getByRole('region', { name: 'Coaches’ marks beside each other' })
    await expect(beside.getByRole('row', { name: /entry/ })).toContainText(`166 ms later, ${10} frames`)
    expect(Math.round(0.166 * rate)).toBe(10)
    expect(await head.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect((await new AxeBuilder({ page: head }).analyze()).violations).toEqual([])
    await context.close()
  } finally {
    await closeCove(demo, cove)
  }
})

test('on a slow network a step, a way to a mark, and marks pressed one after the other are of the frame that is shown', async ({
  page,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    const { own } = await film(page, cove.diver, links, inward)
    await mark(demo, own, cove.assistant, { 'come-out': 2.2 })
    await inPieces(page, { bytes: 4096, after: 600 })
    await page.goto(`/desk/moments/${own}`)
    const there = () => page.locator('video').evaluate((one: HTMLVideoElement) => one.readyState)
    await expect.poll(there, { timeout: 30_000 }).toBeGreaterThan(1)
    await page.getByRole('button', { name: 'Go to come-out, 2.200 s' }).click()
    await expect.poll(async () => frameOf(await shownAt(page)), { timeout: 30_000 }).toBe(132)
    await page.locator('video').focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('7')
    await expect(said(page)).toHaveText('Kept: entry at 2.217 s.', { timeout: 30_000 })
    expect(frameOf(await shownAt(page))).toBe(133)

    // Nothing is lost of what is pressed before the first answer, and a key held down marks once.
    await page.route('**/desk/moments/**', async (route) => {
      if (route.request().method() === 'POST') await new Promise((resolve) => setTimeout(resolve, 600))
      await route.continue()
    })
    await page.keyboard.press('Home')
    await page.keyboard.down('m')
    await page.keyboard.down('m')
    await page.keyboard.down('m')
    await page.keyboard.up('m')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('m')
    await expect(page.locator('.marks-list tr').nth(0)).toContainText('0.300 s', { timeout: 30_000 })
    await expect(page.locator('.marks-list tr').nth(1)).toContainText('0.317 s', { timeout: 30_000 })
    await expect(page.locator('.marks-list tr').filter({ hasText: /\d\.\d{3} s/ })).toHaveCount(4)

    // Taken back, its button is gone: the keys go on working from the one beside it.
    await page.getByRole('button', { name: 'Take back entry' }).press('Enter')
    await expect(said(page)).toHaveText('Taken back: entry.')
    await expect(page.getByRole('button', { name: 'Mark entry' })).toBeFocused()
  } finally {
    await closeCove(demo, cove)
  }
})
