import { afterEach, describe, expect, it, vi } from 'vitest'
import { fetchSnapshot } from './fetch-snapshot'

const answer = (status: number, body: unknown) =>
  vi.stubGlobal('fetch', vi.fn().mockResolvedValue(new Response(JSON.stringify(body), { status })))

afterEach(() => vi.unstubAllGlobals())

describe('asking for the snapshot', () => {
  it.each([401, 403])('is refused on %d, in the words of the server', async (status) => {
    answer(status, { message: 'Sign in to go on.' })
    expect(await fetchSnapshot(null)).toEqual({ kind: 'refused', message: 'Sign in to go on.' })
  })

  it('says for whom it already holds ratings', async () => {
    answer(401, {})
    await fetchSnapshot('coach-1')
    expect(vi.mocked(fetch).mock.calls[0]?.[1]?.headers).toEqual({ 'x-deck-coach': 'coach-1' })
  })

  it.each([
    ['an error of the server', 500, { message: 'Too busy.' }, /Too busy/],
    ['another page in between', 200, { html: true }, /not the server/],
    ['a newer server', 200, { v: 99, edition: {}, divers: [] }, /newer deck/],
  ])('fails with words on %s', async (_, status, body, message) => {
    answer(status, body)
    expect(await fetchSnapshot(null)).toEqual({ kind: 'failed', message: expect.stringMatching(message) })
  })

  it('fails with words without a network', async () => {
    vi.stubGlobal('fetch', vi.fn().mockRejectedValue(new TypeError('no network')))
    expect(await fetchSnapshot(null)).toEqual({ kind: 'failed', message: 'The server could not be reached.' })
  })
})
