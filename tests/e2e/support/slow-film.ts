import type { Page } from '@playwright/test'

interface Pieces {
  /** The most that one answer holds. */
  readonly bytes: number
  /** Milliseconds before each answer. */
  readonly after: number
}

/** Gives the films of this server in small pieces, each after a while, as a slow network does. */
export async function inPieces(page: Page, { bytes, after }: Pieces): Promise<void> {
  await page.route('**/media/**', async (route) => {
    const asked = /bytes=(\d+)-(\d*)/.exec(route.request().headers().range ?? '')
    const from = Number(asked?.[1] ?? 0)
    const film = await (await route.fetch({ headers: {} })).body()
    const to = Math.min(film.length, from + bytes, asked?.[2] ? Number(asked[2]) + 1 : film.length)
    await new Promise((resolve) => setTimeout(resolve, after))
    await route.fulfill({
      status: 206,
      contentType: 'video/webm',
      headers: { 'accept-ranges': 'bytes', 'content-range': `bytes ${from}-${to - 1}/${film.length}` },
      body: film.subarray(from, to),
    })
  })
}
