import type { Page } from '@playwright/test'
import type { Point } from '../../../lib/assessment/measure/picture'
import { frameOf, shownAt } from './film'
import { expect } from './test'

const size = { width: 720, height: 540 }

/** The picture as a thing to place points on. */
export const boardOf = (page: Page) => page.getByRole('button', { name: /Arrows move it by a pixel/ })

/** Where a place of the film is on the screen. */
export async function onScreen(page: Page, { x, y }: Point): Promise<Point> {
  const box = await boardOf(page).boundingBox()
  if (!box) throw new Error('there is no picture to place points on')
  const scale = Math.min(box.width / size.width, box.height / size.height)
  return {
    x: box.x + (box.width - size.width * scale) / 2 + x * scale,
    y: box.y + (box.height - size.height * scale) / 2 + y * scale,
  }
}

/** Steps until a frame is shown, by keys from wherever the focus is in the clip. */
export async function stepTo(page: Page, frame: number): Promise<void> {
  for (let presses = 0; presses < 240; presses++) {
    const before = await shownAt(page)
    const by = frame - frameOf(before)
    if (by === 0) return
    await page.keyboard.press(by > 0 ? 'ArrowRight' : 'ArrowLeft')
    await expect.poll(() => shownAt(page), { intervals: [20], timeout: 15_000 }).not.toBe(before)
  }
  throw new Error(`frame ${frame} was not reached`)
}

const slotButton = (page: Page, slot: string) =>
  page
    .getByRole('list', { name: 'Points to place' })
    .getByRole('button', { name: new RegExp(`^${slot} ?, (placed|if|to place)`) })

/** Chooses each point and clicks where it is in the film. */
export async function place(page: Page, points: Readonly<Record<string, Point>>): Promise<void> {
  for (const [slot, at] of Object.entries(points)) {
    await slotButton(page, slot).click()
    const { x, y } = await onScreen(page, at)
    await page.mouse.click(x, y)
    await expect(slotButton(page, slot)).toHaveAccessibleName(/placed/)
  }
}

const number = (text: string): number => Number(text.replace('−', '-'))

/** A number on the page with its 95 % interval, by what it is called: its sign is clockwise. */
export async function readResult(page: Page, called: string) {
  const line = page.locator('[aria-live] .results-list').getByRole('listitem').filter({ hasText: called })
  const text = ((await line.textContent()) ?? '').replaceAll('\n', ' ')
  const found = /^(−?[\d.]+).*?95 % sure of (−?[\d.]+) to (−?[\d.]+)/.exec(text)
  if (!found) throw new Error(`no number in: ${text}`)
  const [, value = '', low = '', high = ''] = found
  const sign = text.includes('anticlockwise') ? -1 : 1
  return { value: sign * number(value), low: number(low), high: number(high), text }
}

/** Expects the truth inside the interval that is shown for it; rounding to what is shown is allowed for. */
export async function expectTruth(page: Page, called: string, truth: number, shownTo: number): Promise<void> {
  const { low, high, text } = await readResult(page, called)
  expect(low - shownTo / 2, `${truth} in ${text}`).toBeLessThanOrEqual(truth)
  expect(high + shownTo / 2, `${truth} in ${text}`).toBeGreaterThanOrEqual(truth)
}
