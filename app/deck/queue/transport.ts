import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'
import { envelope } from './batch'

/** What came of one try. `rejected` = the server refused the batch as a whole, so sending it again as it is cannot help. */
export type SendResult =
  | { readonly kind: 'answered'; readonly answers: readonly ItemAnswer[] }
  | { readonly kind: 'signed out'; readonly message: string }
  | { readonly kind: 'rejected'; readonly message: string }
  | { readonly kind: 'unreachable'; readonly message: string }

/** Carries one batch to the server. It may hang; the queue gives up through `signal`. */
export type Send = (items: readonly DeckItem[], signal: AbortSignal) => Promise<SendResult>

const results: readonly unknown[] = ['accepted', 'known', 'refused']

function isAnswer(value: unknown): value is ItemAnswer {
  if (typeof value !== 'object' || value === null) return false
  return 'id' in value && typeof value.id === 'string' && 'result' in value && results.includes(value.result)
}

async function messageOf(response: Response, otherwise: string): Promise<string> {
  const body: unknown = await response.json().catch(() => null)
  if (typeof body === 'object' && body !== null && 'message' in body && typeof body.message === 'string')
    return body.message
  return otherwise
}

/** A status that may pass by itself: try again later. */
const passing = (status: number): boolean => status >= 500 || status === 408 || status === 425 || status === 429

async function readResponse(response: Response): Promise<SendResult> {
  if (response.type === 'opaqueredirect' || response.status === 401 || response.status === 403)
    return { kind: 'signed out', message: await messageOf(response, 'The server asks you to sign in.') }
  if (passing(response.status))
    return { kind: 'unreachable', message: await messageOf(response, `The server answered ${response.status}.`) }
  if (!response.ok)
    return { kind: 'rejected', message: await messageOf(response, `The server answered ${response.status}.`) }
  const body: unknown = await response.json().catch(() => null)
  if (!Array.isArray(body)) return { kind: 'unreachable', message: 'The answer was not the server’s.' }
  return { kind: 'answered', answers: body.filter(isAnswer) }
}

/** Posts to the sync endpoint as the coach who opened the deck; another account's session must not send her ratings. */
export const postTo =
  (url: string, coach: string): Send =>
  async (items, signal) => {
    try {
      const response = await fetch(url, {
        method: 'POST',
        credentials: 'same-origin',
        redirect: 'manual',
        headers: { 'content-type': 'application/json', 'x-deck-coach': coach },
        body: JSON.stringify(envelope(items, Date.now())),
        signal,
      })
      return await readResponse(response)
    } catch {
      return { kind: 'unreachable', message: 'The server could not be reached.' }
    }
  }
