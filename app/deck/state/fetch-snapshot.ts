import type { DeckSnapshot } from '@/lib/assessment/deck/contract'
import { deckVersion } from '@/lib/assessment/deck/limits'

/** What came of asking for the snapshot. `refused` = the server knows nobody who may see it. */
export type SnapshotResult =
  | { readonly kind: 'snapshot'; readonly snapshot: DeckSnapshot }
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'failed'; readonly message: string }

const failed = (message: string): SnapshotResult => ({ kind: 'failed', message })

const sentence = (body: unknown, otherwise: string): string =>
  typeof body === 'object' && body !== null && 'message' in body && typeof body.message === 'string'
    ? body.message
    : otherwise

const isSnapshot = (body: unknown): body is DeckSnapshot =>
  typeof body === 'object' && body !== null && 'v' in body && 'edition' in body && 'divers' in body

async function readAnswer(response: Response): Promise<SnapshotResult> {
  const body: unknown = await response.json().catch(() => null)
  if (response.type === 'opaqueredirect' || response.status === 401 || response.status === 403)
    return { kind: 'refused', message: sentence(body, 'Sign in to go on.') }
  if (!response.ok) return failed(sentence(body, `The server answered ${response.status}.`))
  if (!isSnapshot(body)) return failed('The answer was not the server’s. A network sign-in page may stand in between.')
  if (body.v !== deckVersion) return failed('The server speaks a newer deck. Load this page again.')
  return { kind: 'snapshot', snapshot: body }
}

/** Asks for everything that the deck shows. `coach` is set when this deck already holds ratings of somebody. */
export async function fetchSnapshot(coach: string | null): Promise<SnapshotResult> {
  try {
    const response = await fetch('/api/deck/snapshot', {
      credentials: 'same-origin',
      redirect: 'manual',
      cache: 'no-store',
      headers: coach === null ? {} : { 'x-deck-coach': coach },
    })
    return await readAnswer(response)
  } catch {
    return failed('The server could not be reached.')
  }
}
