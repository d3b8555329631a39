import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'

/** An item that the server did not take: nothing of it is stored there, all of it is kept here until mended or discarded. */
export interface RefusedItem {
  readonly item: DeckItem
  readonly answer: ItemAnswer
}

/** How sending stands: `waiting` = it failed and will be tried again at `retryAt`; `signed out` = the server wants a sign-in first. */
export type Sending = 'idle' | 'sending' | 'waiting' | 'signed out'

/** An immutable picture of the queue; a new object whenever something changed. */
export interface QueueState {
  /** In the order in which they are sent: parents before children. */
  readonly unsent: readonly DeckItem[]
  readonly refused: readonly RefusedItem[]
  readonly sending: Sending
  /** Device clock of the last answer from the server. */
  readonly lastSentAt: number | null
  readonly retryAt: number | null
  /** Why the last try failed, as a sentence. */
  readonly problem: string | null
  /** Items that the server has but for a part, and why: the coach is told once, until `told`. */
  readonly keptWithout: readonly { readonly item: DeckItem; readonly message: string }[]
  /** Why what was recorded last could not be kept on this phone, as a sentence; null once something was. */
  readonly unkept: string | null
}

/**
 * Where everything recorded on the deck waits until the server has it. What a promise here resolves for is kept on the
 * device; the screen says "kept" no sooner. A promise that rejects has changed nothing.
 */
export interface DeckQueue {
  /** Keeps the items, parents first, and starts sending. An id that is already here is not added twice. */
  add(items: readonly DeckItem[]): Promise<void>
  unsent(): QueueState
  subscribe(listener: () => void): () => void
  /** Tries at once, without waiting for the next retry; resolves when this try is over. */
  sendNow(): Promise<void>
  /** Sends a refused item again, changed or as it was, with those that were refused only because of it. */
  mend(id: string, replacement?: DeckItem): Promise<void>
  /** The coach has read what was kept without a part. */
  told(): void
  /** Gives up a refused item and everything that rests on it; answers the ids that went. */
  discard(id: string): Promise<readonly string[]>
}

/** For a writer that goes on only with what is kept; why it was not stands in the queue's `unkept`. */
export const succeeds = (kept: Promise<unknown>): Promise<boolean> =>
  kept.then(
    () => true,
    () => false,
  )
