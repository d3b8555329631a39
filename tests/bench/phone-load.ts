import type { Browser, BrowserContext, CDPSession, Page } from '@playwright/test'

/** A mid-range phone on a bad line: a processor four times slower, 1.6 Mbit/s down, 0.75 up, 150 ms there and back. */
const slowPhone = { cpu: 4, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 } as const

export interface LoadFigures {
  /** Bytes on the line, compressed, by what they are. */
  readonly bytes: Readonly<Record<string, number>>
  /** Milliseconds until the divers stand there and the next tap was answered; first without, then with what the phone keeps. */
  readonly first: number
  readonly again: number
}

export const asCoach = async (browser: Browser, url: string, token: string): Promise<BrowserContext> => {
  const context = await browser.newContext({
    baseURL: url,
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  })
  await context.addCookies([{ name: 'plumbline.session', value: token, url }])
  return context
}

async function throttle(page: Page): Promise<CDPSession> {
  const { cpu, ...line } = slowPhone
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: cpu })
  await devtools.send('Network.enable')
  await devtools.send('Network.emulateNetworkConditions', { offline: false, ...line })
  return devtools
}

/** Opens the deck and taps the first diver: the time until her screen is there is the time until the deck can be used. */
async function openAndTap(page: Page): Promise<number> {
  const began = performance.now()
  await page.goto('/deck')
  await page.locator('.deck-list a').first().tap()
  await page.getByLabel('Find a skill').waitFor()
  return performance.now() - began
}

/** Loads the deck on a slow phone, first as a stranger, then again. */
export async function phoneLoad(browser: Browser, url: string, token: string): Promise<LoadFigures> {
  const context = await asCoach(browser, url, token)
  try {
    const page = await context.newPage()
    const devtools = await throttle(page)
    const bytes: Record<string, number> = {}
    const types = new Map<string, string>()
    devtools.on('Network.responseReceived', ({ requestId, type, response }) =>
      types.set(requestId, response.url.includes('/api/deck/snapshot') ? 'snapshot' : type.toLowerCase()),
    )
    devtools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      const type = types.get(requestId) ?? 'other'
      bytes[type] = (bytes[type] ?? 0) + encodedDataLength
    })
    const first = await openAndTap(page)
    const weight = { ...bytes }
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 120_000 })
    const again = await openAndTap(await sameAgain(page))
    return { bytes: weight, first, again }
  } finally {
    await context.close()
  }
}

/** Another page of the same phone, as slow. */
async function sameAgain(before: Page): Promise<Page> {
  const page = await before.context().newPage()
  await before.close()
  await throttle(page)
  return page
}
