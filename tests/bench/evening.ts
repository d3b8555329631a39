import type { Locator, Page } from '@playwright/test'

export interface EveningFigures {
  readonly attempts: number
  readonly taps: number
  /** Taps from one attempt kept to the next, without choosing diver and skill. */
  readonly tapsAnAttempt: number
  readonly seconds: number
  /** Of one attempt, from its first tap to "kept". */
  readonly secondsAnAttempt: number
  readonly slowestAttempt: number
}

/** Between two taps: a thumb that knows where to go, and slower than what the deck takes for one tap too many. */
const pauseMs = 400

/** Twelve divers, three called attempts each, at 101C on 1 m: one fault marked, what is critical rated, the rest as expected. */
export async function evening(page: Page, divers: number, each: number): Promise<EveningFigures> {
  let taps = 0
  const tap = async (target: Locator) => {
    await target.tap()
    taps += 1
    await page.waitForTimeout(pauseMs)
  }
  const dock = page.getByRole('region', { name: 'Must be rated' })
  const kept = page.getByText(/^Kept\./)
  const times: number[] = []
  let onAttempts = 0
  const began = performance.now()
  await tap(page.locator('.deck-list a').first())
  await tap(page.getByRole('link', { name: /101C/ }).first())
  for (let diver = 0; diver < divers; diver++) {
    await tap(page.getByRole('button', { name: `Call ${each}` }))
    for (let attempt = 0; attempt < each; attempt++) {
      const [before, start] = [taps, performance.now()]
      await tap(page.locator('.deck-fault').first())
      const count = Number(/of (\d+)/.exec((await dock.textContent()) ?? '')?.[1] ?? 1)
      for (let turn = 0; turn < count; turn++) await tap(dock.locator('.rating-expected'))
      await tap(page.getByRole('button', { name: 'Rest as expected · keep' }))
      await kept.waitFor()
      times.push((performance.now() - start) / 1000)
      onAttempts += taps - before
    }
    if (diver < divers - 1) await tap(page.getByRole('link', { name: /^Next:/ }))
  }
  const seconds = (performance.now() - began) / 1000
  await page.getByRole('link', { name: /all sent/ }).waitFor({ timeout: 60_000 })
  return {
    attempts: times.length,
    taps,
    tapsAnAttempt: onAttempts / times.length,
    seconds,
    secondsAnAttempt: times.reduce((sum, time) => sum + time, 0) / times.length,
    slowestAttempt: Math.max(...times),
  }
}
