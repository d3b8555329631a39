import { afterEach, describe, expect, it, vi } from 'vitest'
import { anAttempt } from '@/tests/support/deck-items'
import { postTo } from './transport'

const attempt = anAttempt()
const send = postTo('/api/deck/sync', 'coach-1')
const trySend = () => send([attempt], new AbortController().signal)
const json = (body: unknown, status = 200) => new Response(JSON.stringify(body), { status })
const answering = (response: () => Response | Promise<Response>) =>
  vi.stubGlobal(
    'fetch',
    vi.fn(async () => response()),
  )

afterEach(() => vi.unstubAllGlobals())

describe('postTo', () => {
  it('posts the envelope as JSON from the same origin, in the name of the coach who opened the deck', async () => {
    answering(() => json([{ id: attempt.id, result: 'accepted' }]))
    expect(await trySend()).toEqual({ kind: 'answered', answers: [{ id: attempt.id, result: 'accepted' }] })
    const [url, options] = vi.mocked(fetch).mock.calls[0] ?? []
    expect(url).toBe('/api/deck/sync')
    expect(options).toMatchObject({ method: 'POST', credentials: 'same-origin', redirect: 'manual' })
    expect(options?.headers).toEqual({ 'content-type': 'application/json', 'x-deck-coach': 'coach-1' })
    expect(JSON.parse(String(options?.body))).toEqual({ v: 1, sentAt: expect.any(Number), items: [attempt] })
  })

  it.each([401, 403])('%i asks for a sign-in', async (status) => {
    answering(() => json({}, status))
    expect(await trySend()).toMatchObject({ kind: 'signed out' })
  })

  it.each([408, 425, 429, 500, 502, 503])('%i is tried again', async (status) => {
    answering(() => new Response('<html>', { status }))
    expect(await trySend()).toEqual({ kind: 'unreachable', message: `The server answered ${status}.` })
  })

  it.each([400, 404, 413, 422])('%i rejects the batch, with the server’s words', async (status) => {
    answering(() => json({ message: 'send at most 50 items at once' }, status))
    expect(await trySend()).toEqual({ kind: 'rejected', message: 'send at most 50 items at once' })
  })

  it.each([
    ['a page instead of JSON', () => new Response('<html>')],
    ['an object instead of a list', () => json({ ok: true })],
    ['no network', () => Promise.reject(new TypeError('Failed to fetch'))],
  ])('%s is tried again', async (_, response) => {
    answering(response)
    expect(await trySend()).toMatchObject({ kind: 'unreachable' })
  })

  it('leaves out answers that make no sense', async () => {
    answering(() =>
      json([null, 3, { id: attempt.id }, { id: attempt.id, result: 'maybe' }, { id: 'x', result: 'known' }]),
    )
    expect(await trySend()).toEqual({ kind: 'answered', answers: [{ id: 'x', result: 'known' }] })
  })
})
