import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { trueDive } from '../../seed/clips/true-dive'
import { type Cove, closeCove, makeCove } from './support/cove'
import { film, frameOf, shownAt } from './support/film'
import { boardOf, expectTruth, onScreen, place, stepTo } from './support/measuring'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const inward = { skill: '401B', place: '1m', atLevel: 'soundings' }
const dive = trueDive('401b-leaning')
const measure = (page: Page) => page.getByRole('button', { name: /^Measure/ })
const choose = (page: Page, kind: string) => page.getByLabel('Measure', { exact: true }).selectOption({ label: kind })
const keepIt = async (page: Page, kind: string) => {
  await page.getByRole('button', { name: 'Keep this measure' }).click()
  await expect(page.getByRole('status').filter({ hasText: `Kept: ${kind}.` })).toBeVisible()
}
const shownDots = (page: Page) => page.locator('svg.points').first().locator('.points-rim')

test('points placed where they truly are give back the truth within what is stated, are kept, and stand there again', async ({
  page,
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    await page.setViewportSize({ width: 1440, height: 900 })
    await signInAs(page, demo, cove.emails.assistant)
    const start = Math.floor((dive.leaves / 60) * 10) / 10
    const { own } = await film(page, cove.diver, { own: dive.link }, { what: inward, start, end: 2.6 })
    await page.goto(`/desk/moments/${own}`)
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(start * 60)
    await page.locator('video').focus()
    await stepTo(page, dive.leaves)
    await page.keyboard.press('4')
    await expect(page.getByRole('status').filter({ hasText: 'Kept: flight' })).toBeVisible()

    await measure(page).click()
    await page.getByLabel('Upright by').selectOption({ label: 'a plumb line' })
    const atLeave = dive.points(dive.leaves)
    const { ankle, hip, shoulder, head, hand } = atLeave
    const { tip, ...still } = dive.still
    const plumb = { 'upright, top': still['plumb top'], 'upright, bottom': still['plumb bottom'] }
    await place(page, { ankle, hip, shoulder, head, ...plumb })
    await expectTruth(page, 'from the vertical', dive.tilt(dive.leaves), 0.1)
    await keepIt(page, 'Tilt of the body’s line')
    await choose(page, 'Arms')
    await place(page, { hand })
    await expectTruth(page, 'arms from the vertical', dive.arms(dive.leaves), 0.1)
    await keepIt(page, 'Arms')

    // In flight: the angle of the pike, the head's way past the tip, and how fast it turns.
    const middle = Math.round((dive.leaves + dive.meets) / 2)
    await measure(page).focus()
    await stepTo(page, middle)
    await page.getByRole('button', { name: 'Clear' }).click()
    await choose(page, 'Angle at the hip')
    const bent = dive.points(middle)
    await place(page, { shoulder: bent.shoulder, hip: bent.hip, ankle: bent.ankle })
    await expectTruth(page, 'at the hip', dive.hipAngle(middle), 0.1)
    await keepIt(page, 'Angle at the hip')
    await choose(page, 'Distance from the tip')
    await page.getByLabel('Known length, in metres').fill('1')
    const known = { 'known length, one end': still['length from'], 'known length, other end': still['length to'] }
    await expect(page.getByText(/passes the level of the board on the way down/)).toBeVisible()
    await place(page, { 'nearest part of the body': bent.head, 'tip of the board': tip, ...known, ...plumb })
    await expect(page.getByText('Still to place: board, further in.')).toBeVisible()
    // Halfway through this dive the head is still over the board. A point on the wrong side of the tip hides that.
    const caution = page.getByText(/Behind the tip, where the board is/)
    await place(page, { 'board, further in': { x: tip.x + 60, y: tip.y } })
    await expectTruth(page, 'level from the tip', dive.headFromTip(middle), 0.01)
    await expect(caution).toHaveCount(0)
    await page.getByRole('button', { name: 'Undo' }).click()
    await place(page, { 'board, further in': { x: tip.x - 60, y: tip.y } })
    await expectTruth(page, 'm over the board measured level from the tip', -dive.headFromTip(middle), 0.01)
    await expect(caution).toBeVisible()
    await expect(page.getByText(/^Not where the body passes the level of the board/)).toBeVisible()
    await keepIt(page, 'Distance from the tip')
    await choose(page, 'Turn between two frames')
    await measure(page).focus()
    await stepTo(page, middle + 6)
    const later = dive.points(middle + 6)
    await place(page, { 'hip, later': later.hip, 'shoulder, later': later.shoulder })
    await expectTruth(page, 'rate of turn', dive.turn(middle, middle + 6), 1)
    await expectTruth(page, 'between the frames', dive.turn(middle, middle + 6) / 10, 0.1)
    await keepIt(page, 'Turn between two frames')

    // Between the marks: the flight.
    await page.getByRole('button', { name: 'Mark phases' }).click()
    await stepTo(page, dive.meets)
    await page.keyboard.press('7')
    await expect(page.getByRole('status').filter({ hasText: 'Kept: entry' })).toBeVisible()
    await measure(page).click()
    await choose(page, 'Flight')
    await page.getByLabel('Drop, in metres').fill(dive.truth.drop.toFixed(3))
    await page.getByLabel('Give or take').fill('0.01')
    await expectTruth(page, 'in the air', dive.truth.flightTime, 0.001)
    await expectTruth(page, 'upwards at take-off', dive.truth.speed, 0.01)
    await expectTruth(page, 'height gained', dive.truth.rise, 0.01)
    await expectTruth(page, 'at the water', dive.truth.entrySpeed, 0.01)
    await keepIt(page, 'Flight')
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

    // Points of one measure are not taken along to the frame of another.
    await choose(page, 'Tilt of the body’s line')
    await page.getByRole('button', { name: 'Clear' }).click()
    await page.getByLabel('Upright by').selectOption({ label: 'the camera, ±2°' })
    await place(page, { ankle: { x: 300, y: 300 }, head: { x: 300, y: 200 } })
    await measure(page).focus()
    await stepTo(page, dive.meets - 6)
    await choose(page, 'Distance from the tip')
    await place(page, { 'nearest part of the body': { x: 340, y: 300 } })
    await expect(page.getByText('Dropped, since they were on another frame: ankle and head.')).toBeVisible()
    await page.getByRole('button', { name: 'Undo' }).click()
    await choose(page, 'Tilt of the body’s line')
    await expect(page.locator('[aria-live] .results-list')).toContainText('from the vertical')

    // Another coach sees them on the frame again, and takes none of them back.
    const other = await (
      await browser.newContext({ baseURL: demo.url, viewport: { width: 1440, height: 900 } })
    ).newPage()
    await signInAs(other, demo, cove.emails.head)
    await other.goto(`/desk/moments/${own}`)
    await measure(other).click()
    const kept = other.getByRole('list', { name: 'Measures that were kept' })
    await expect(kept.locator(':scope > li')).toHaveCount(6)
    await kept.getByRole('button', { name: 'Show Tilt of the body’s line by assistant of the cove' }).click()
    await expect.poll(async () => frameOf(await shownAt(other))).toBe(dive.leaves)
    await expect(shownDots(other)).toHaveCount(6)
    const drawn = await shownDots(other).evaluateAll((dots) =>
      dots.map((one) => (one.getAttribute('d') ?? '').split(' ').slice(1, 3).map(Number)),
    )
    for (const { x, y } of Object.values({ ankle, hip, shoulder, head }))
      expect(drawn.some(([left = 0, top = 0]) => Math.hypot(left - x, top - y) < 1.5)).toBe(true)
    await expect(kept.getByRole('button', { name: /Take back/ })).toHaveCount(0)
    expect((await new AxeBuilder({ page: other }).analyze()).violations).toEqual([])
    await other.context().close()

    await page.getByRole('button', { name: 'Take back Flight' }).click()
    await expect(page.getByRole('status').filter({ hasText: 'Taken back: Flight.' })).toBeVisible()
    await page.reload()
    await expect(page.getByRole('button', { name: 'Measure · 5 kept' })).toBeVisible()
  } finally {
    await closeCove(demo, cove)
  }
})

test('points are placed by keys alone, and with a finger beside whose tip a loupe shows what it hides', async ({
  page,
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    await signInAs(page, demo, cove.emails.assistant)
    const { own } = await film(page, cove.diver, { own: dive.link }, { what: inward, start: 1, end: 2.6 })
    await page.goto(`/desk/moments/${own}`)
    await expect.poll(async () => frameOf(await shownAt(page))).toBe(60)
    await measure(page).press('Enter')
    await boardOf(page).focus()
    await page.keyboard.press('Enter')
    const readout = page.locator('.slot-nudges')
    await expect(readout).toContainText('ankle at 360, 270')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowDown')
    await expect(readout).toContainText('ankle at 361, 280')
    expect(frameOf(await shownAt(page))).toBe(60)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await expect(readout).toContainText('hip at 361, 253')
    for (let tens = 0; tens < 9; tens++) await page.keyboard.press('Shift+ArrowUp')
    await expect(page.locator('[aria-live] .results-list')).toContainText('0.0° from the vertical')
    await page.getByRole('button', { name: 'Undo' }).press('Enter')
    await expect(readout).toContainText('hip at 361, 173')
    await page.getByRole('button', { name: 'Keep this measure' }).press('Enter')
    await expect(page.getByRole('status').filter({ hasText: 'Kept: Tilt' })).toBeVisible()

    const phone = await browser.newContext({ baseURL: demo.url, viewport: { width: 390, height: 844 }, hasTouch: true })
    const head = await phone.newPage()
    await signInAs(head, demo, cove.emails.head)
    await head.goto(`/desk/moments/${own}`)
    await expect.poll(async () => frameOf(await shownAt(head))).toBe(60)
    await measure(head).tap()
    const { ankle, hip } = dive.points(60)
    const touch = await phone.newCDPSession(head)
    const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points })
    await boardOf(head).scrollIntoViewIfNeeded()
    const down = await onScreen(head, { x: ankle.x - 60, y: ankle.y - 40 })
    await finger('touchStart', [down])
    await expect(head.locator('canvas.loupe')).toBeVisible()
    const to = await onScreen(head, ankle)
    await finger('touchMove', [to])
    await finger('touchEnd', [])
    await expect(head.locator('canvas.loupe')).toHaveCount(0)
    const spot = await onScreen(head, hip)
    await head.touchscreen.tap(spot.x, spot.y)
    await expectTruth(head, 'from the vertical', dive.tilt(60), 0.1)
    await head.getByRole('button', { name: 'Move the hip left by a pixel' }).tap()
    expect(await head.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect((await new AxeBuilder({ page: head }).analyze()).violations).toEqual([])

    // What tells no direction says so, and cannot be kept.
    await head.getByRole('button', { name: 'Clear' }).tap()
    // The page may have scrolled to the button: the picture is where it is now.
    await boardOf(head).scrollIntoViewIfNeeded()
    const here = await onScreen(head, hip)
    await head.touchscreen.tap(here.x, here.y)
    await head.touchscreen.tap(here.x + 2, here.y)
    await expect(head.getByText(/pixels apart, and a direction needs 10/)).toBeVisible()
    await expect(head.getByRole('button', { name: 'Keep this measure' })).toBeDisabled()
    await phone.close()
  } finally {
    await closeCove(demo, cove)
  }
})
