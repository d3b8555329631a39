import fs from 'node:fs/promises'
import AxeBuilder from '@axe-core/playwright'
import type { Page, Route } from '@playwright/test'
import { type Cove, closeCove, makeCove } from './support/cove'
import { bothShow, mark, offAt, seenByBoth, watchBoth } from './support/duo'
import { film } from './support/film'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

// What the two films show is simulated: these are the true times, each in the first frame at or after it.
const short = { press: 0.317, flight: 1.017, entry: 2.067 }
const long = { press: 0.317, flight: 1.017, entry: 2.383 }
const frame = 1 / 60
const at101B = { what: { skill: '101B', place: '1m', atLevel: 'soundings' }, start: 0.3 }

/** Two moments of the same dive, the second with a longer flight, both marked by the assistant. */
async function twoMoments(page: Page, cove: Cove) {
  const { one } = await film(page, cove.diver, { one: '/media/clips/101b-sound.webm' }, { ...at101B, end: 2.6 })
  const { other } = await film(page, cove.diver, { other: '/media/clips/101b-3m-sound.webm' }, { ...at101B, end: 2.9 })
  return { one, other }
}
const together = async (page: Page, times: readonly [number, number]) => {
  await expect
    .poll(async () => (await bothShow(page)).map((time, side) => Math.abs(time - (times[side] ?? 0)) < frame))
    .toEqual([true, true])
}
/** Answers as a host of films does: with the part that was asked for, without which no browser seeks. */
const giveRange = async (route: Route, file: string) => {
  const bytes = await fs.readFile(file)
  const from = Number(/bytes=(\d+)/.exec((await route.request().headerValue('range')) ?? '')?.[1] ?? 0)
  await route.fulfill({
    status: 206,
    contentType: 'video/webm',
    headers: { 'Accept-Ranges': 'bytes', 'Content-Range': `bytes ${from}-${bytes.length - 1}/${bytes.length}` },
    body: bytes.subarray(from),
  })
}
const rowOf = (page: Page, name: string) => page.getByRole('row', { name: new RegExp(`^${name}`) }).first()

test.use({ expectedErrors: [/ERR_|Failed to load|404/] })

test.describe('frame by frame', () => {
  test.use({ alone: true })

  test('two films run together from mark to mark, by keys alone, and the address keeps how', async ({ page, demo }) => {
    const cove = makeCove(demo)
    try {
      await signInAs(page, demo, cove.emails.head)
      const { one, other } = await twoMoments(page, cove)
      await mark(demo, one, cove.assistant, short)
      await mark(demo, other, cove.assistant, long)

      await page.goto(`/desk/divers/${cove.diver}/${encodeURIComponent('101B@1m')}`)
      const ticks = page.getByRole('checkbox', { name: /^Compare the moment of/ })
      await ticks.nth(1).check()
      await ticks.nth(0).check()
      await page.getByRole('button', { name: 'Compare two moments' }).click()
      await expect(page.getByLabel('Two films under one control')).toBeVisible()
      await page.goto(`/desk/moments/compare?moment=${one}&moment=${other}`)

      await together(page, [short.flight, long.flight])
      const films = page.getByLabel('Two films under one control')
      await films.locator('video').first().focus()
      await page.keyboard.press('PageDown')
      await together(page, [short.entry, short.entry])
      await films.getByLabel('Run them').selectOption({ label: 'so that both fly equally long' })
      await together(page, [short.entry, long.entry])
      await films.locator('video').first().focus()
      await page.keyboard.press('ArrowRight')
      await together(page, [short.entry + frame, long.entry + frame])
      await page.keyboard.press('Home')
      await together(page, [0.3, 0.3])

      // Any faster a busy machine leaves frames out, and nobody can tell which film is off.
      await page.keyboard.press('ArrowDown')
      for (const speed of ['1/4', '1/8']) {
        await page.keyboard.press('ArrowDown')
        await expect(films.getByLabel('Speed').locator('option:checked')).toHaveText(speed)
        await watchBoth(page)
        await page.keyboard.press(' ')
        await expect(films.getByRole('button', { name: 'Pause' })).toBeVisible()
        const off = async () => {
          const seen = await seenByBoth(page)
          return (['press', 'flight', 'entry'] as const).map((key) => offAt(seen, [short[key], long[key]]))
        }
        // Past every mark, the whole of the film once or more.
        const passed = async () => Math.min(...(await off()).map((times) => times.length))
        await expect.poll(passed, { timeout: 90_000, intervals: [500] }).toBeGreaterThan(0)
        await page.keyboard.press(' ')
        await expect(films.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
        for (const by of (await off()).flat()) expect(Math.abs(by)).toBeLessThan(frame + 0.002)
      }

      await page.keyboard.press('o')
      // A key that is held down does not write the address each time, which some browsers refuse; nor turns a picture to and fro.
      await page.evaluate(() => {
        const write = history.replaceState.bind(history)
        const all: string[] = []
        history.replaceState = (...to) => {
          all.push(String(to[2]))
          write(...to)
        }
        Object.assign(window, { written: all })
      })
      for (let count = 0; count < 30; count++) await page.keyboard.down('=')
      await page.keyboard.up('=')
      await expect(page).toHaveURL(/size=130$/)
      expect(await page.evaluate(() => (window as unknown as { written: string[] }).written.length)).toBeLessThan(20)
      await page.keyboard.press('0')
      await page.keyboard.down('m')
      await page.keyboard.down('m')
      await page.keyboard.up('m')
      await page.keyboard.press('Shift+ArrowRight')
      await page.keyboard.press(']')
      await expect(page).toHaveURL(/pace=flight&view=over&mirrored=yes&strength=55&x=5$/)
      await page.reload()
      await expect(films.getByLabel('Show them')).toHaveValue('over')
      await expect(films.getByLabel('Turn the second round')).toBeChecked()
      await expect(films.locator('video')).toHaveCount(2)
      await together(page, [short.flight, long.flight])

      await expect(
        page.getByRole('rowgroup').filter({ hasText: 'No difference that this film can show' }),
      ).toContainText('press')
      await expect(rowOf(page, 'in the air')).toContainText('1.050 ± 0.013 s')
      await expect(rowOf(page, 'in the air')).toContainText('second 0.316 ± 0.019 s longer')
      for (const width of [390, 1440]) {
        await page.setViewportSize({ width, height: 900 })
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
        expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
      }
    } finally {
      await closeCove(demo, cove)
    }
  })
})

test('a film that cannot be had leaves the other usable, and nobody is asked before a click', async ({
  page,
  demo,
}) => {
  const cove = makeCove(demo)
  const asked: string[] = []
  await page.route('https://films.invalid/**', (route) => {
    asked.push(route.request().url())
    return route.abort()
  })
  try {
    await signInAs(page, demo, cove.emails.head)
    const links = { own: '/media/clips/101b-sound.webm', gone: 'https://films.invalid/gone.mp4' }
    const ids = await film(page, cove.diver, { ...links, page: 'https://films.invalid/watch?v=7' })
    await page.goto(`/desk/moments/compare?moment=${ids.own}&moment=${ids.gone}`)
    await expect(page.getByText('no mark in common')).toBeVisible()
    const ask = page.getByRole('button', { name: 'Play it here, from films.invalid' })
    await expect(ask).toBeVisible()
    expect(asked).toEqual([])
    await ask.click()
    await expect(page.getByText('Evidence not reachable')).toBeVisible()
    expect(asked).toEqual([links.gone])
    await expect.poll(async () => (await bothShow(page))[0]).toBeCloseTo(0.5, 2)
    await page.getByRole('button', { name: 'Frame on' }).click()
    await expect.poll(async () => (await bothShow(page))[0]).toBeCloseTo(0.517, 2)
    await page.goto(`/desk/moments/compare?moment=${ids.own}&moment=${ids.page}`)
    await expect(page.getByText('a page about a film')).toBeVisible()
    await expect(page.getByRole('link', { name: /at films\.invalid/ })).toHaveAttribute('href', /watch\?v=7#t=/)
    await expect(page.locator('video')).toHaveCount(1)
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  } finally {
    await closeCove(demo, cove)
  }
})

test('a film that somebody else keeps is worked by the same keys once it was asked for', async ({ page, demo }) => {
  const cove = makeCove(demo)
  await page.route('https://films.invalid/**', (route) => giveRange(route, 'public/media/clips/101b-sound.webm'))
  try {
    await signInAs(page, demo, cove.emails.head)
    const links = { own: '/media/clips/101b-sound.webm', late: 'https://films.invalid/late.webm' }
    const ids = await film(page, cove.diver, links)
    await page.goto(`/desk/moments/compare?moment=${ids.own}&moment=${ids.late}`)
    await page.getByRole('button', { name: 'Play it here, from films.invalid' }).press('Enter')
    await expect(page.locator('video')).toHaveCount(2)
    await together(page, [0.5, 0.5])
    for (let count = 0; count < 3; count++) await page.keyboard.press('ArrowRight')
    await together(page, [0.5 + 3 * frame, 0.5 + 3 * frame])
    await page.goto(`/desk/moments/${ids.late}`)
    await page.getByRole('button', { name: 'Play it here, from films.invalid' }).press('Enter')
    await expect(page.locator('video')).toBeFocused()
  } finally {
    await closeCove(demo, cove)
  }
})

test('only two moments of one dive can be compared, and only those that the coach may see', async ({ page, demo }) => {
  const [cove, other] = [makeCove(demo), makeCove(demo)]
  const clip = { own: '/media/clips/101b-sound.webm' }
  try {
    await signInAs(page, demo, other.emails.head)
    const theirs = (await film(page, other.diver, clip, at101B)).own
    await page.context().clearCookies()
    await signInAs(page, demo, cove.emails.head)
    const first = (await film(page, cove.diver, clip, at101B)).own
    const second = (await film(page, cove.diver, clip, at101B)).own
    const fallIn = (await film(page, cove.diver, clip)).own
    const open = async (...ids: string[]) => {
      const answer = await page.goto(`/desk/moments/compare?${ids.map((id) => `moment=${id}`).join('&')}`)
      return answer?.status()
    }
    expect(await open(first, second)).toBe(200)
    await expect(page.getByLabel('Two films under one control')).toBeVisible()
    expect(await open(first, theirs)).toBe(404)
    expect(await open(theirs, first)).toBe(404)
    expect(await open(theirs)).toBe(404)
    expect(await open(first, 'no-id')).toBe(404)
    expect(await open(first, fallIn)).toBe(200)
    await expect(page.getByText('The two show different dives')).toBeVisible()
    await open(first, first)
    await expect(page.getByText('the same moment twice')).toBeVisible()
    await open(first, second, fallIn)
    await expect(page.getByText('3 were chosen')).toBeVisible()
    await open()
    await expect(page.getByText('Two moments are compared')).toBeVisible()

    await open(first)
    await page.getByRole('link', { name: /^Sunniva Marsh, 1 m/ }).click()
    await expect(page.getByLabel('Two films under one control')).toBeVisible()
    await page.goto(`/desk/moments/${first}`)
    await expect(page.getByRole('region', { name: 'Compare with' }).getByRole('link')).toHaveCount(1)
    await expect(page.locator(`a[href*="${theirs}"]`)).toHaveCount(0)
  } finally {
    await closeCove(demo, cove)
    await closeCove(demo, other)
  }
})
