import type { DeckItem } from '@/lib/assessment/deck/contract'
import { batchLimit } from '@/lib/assessment/deck/limits'
import { takeBatch } from './batch'
import type { DeckQueue, QueueState } from './deck-queue'
import { discard, mend, refuse, refusedHere, setAsideChildren, settle } from './steps'
import type { Send, SendResult } from './transport'

/** Milliseconds: the first wait after a failure, the longest, and when a try without an answer is given up. */
export const patience = { first: 1000, longest: 60_000, giveUp: 20_000 } as const

/** One try, given up after a while: a phone between two networks may never hear that its request died. */
async function trySend(send: Send, batch: readonly DeckItem[]): Promise<SendResult> {
  const controller = new AbortController()
  let timer: ReturnType<typeof setTimeout> | undefined
  const silence = new Promise<SendResult>((resolve) => {
    timer = setTimeout(() => {
      resolve({ kind: 'unreachable', message: 'The server did not answer in time.' })
      controller.abort()
    }, patience.giveUp)
  })
  try {
    return await Promise.race([send(batch, controller.signal), silence])
  } catch {
    return { kind: 'unreachable', message: 'The server could not be reached.' }
  } finally {
    clearTimeout(timer)
  }
}

/**
 * A queue that lives as long as the page. One sender at a time, batches in order; an item leaves only when the server has
 * answered for it. `random` in [0, 1) spreads the retries of many phones.
 */
export function memoryQueue(send: Send, random: () => number = Math.random): DeckQueue {
  let state: QueueState = {
    unsent: [],
    refused: [],
    sending: 'idle',
    lastSentAt: null,
    retryAt: null,
    problem: null,
  }
  const listeners = new Set<() => void>()
  /** Ids that the server has: adding one again is a repeat, not a new item. */
  const stored = new Set<string>()
  let failures = 0
  /** Shrinks when the server rejects a whole batch, so that the item at fault is found. */
  let most: number = batchLimit.items
  let timer: ReturnType<typeof setTimeout> | undefined
  let running: Promise<void> | null = null

  const change = (changes: Partial<QueueState>): void => {
    state = { ...state, ...changes }
    for (const listener of listeners) listener()
  }

  /** Ends a run before telling the listeners, so that one that asks for another try gets it. */
  const stop = (changes: Partial<QueueState>): void => {
    running = null
    change(changes)
  }

  const retryLater = (problem: string): void => {
    const longest = Math.min(patience.longest, patience.first * 2 ** failures)
    const delay = Math.round(longest * (0.5 + random() / 2))
    failures += 1
    timer = setTimeout(() => void run(), delay)
    stop({ sending: 'waiting', retryAt: Date.now() + delay, problem })
  }

  /** What follows from one try; false when sending stops for now. */
  const digest = (batch: readonly DeckItem[], result: SendResult): boolean => {
    if (result.kind === 'signed out') {
      stop({ sending: 'signed out', problem: result.message })
      return false
    }
    if (result.kind === 'unreachable') {
      retryLater(result.message)
      return false
    }
    if (result.kind === 'rejected') {
      if (batch.length > 1) most = Math.ceil(batch.length / 2)
      else
        change(
          refuse(
            state,
            batch.map((item) => refusedHere(item, 'malformed', result.message)),
          ),
        )
      return true
    }
    const settled = settle(state, batch, result.answers)
    for (const id of settled.stored) stored.add(id)
    if (settled.answered === 0) {
      retryLater('The server answered, but for none of the items.')
      return false
    }
    failures = 0
    most = batchLimit.items
    change({ ...settled.held, lastSentAt: Date.now() })
    return true
  }

  const sendAll = async (): Promise<void> => {
    for (;;) {
      change(setAsideChildren(state))
      const [first] = state.unsent
      if (!first) break
      const batch = takeBatch(state.unsent, most)
      if (batch.length === 0) {
        change(refuse(state, [refusedHere(first, 'malformed', 'It is too large to be sent.')]))
        continue
      }
      change({ sending: 'sending', retryAt: null })
      if (!digest(batch, await trySend(send, batch))) return
    }
    stop({ sending: 'idle', retryAt: null, problem: null })
  }

  const run = (): Promise<void> => {
    clearTimeout(timer)
    running ??= Promise.resolve().then(sendAll)
    return running
  }

  /** Starts unless a retry or a sign-in is awaited: a new rating does not hurry a dead network. */
  const start = (): void => {
    if (state.sending === 'idle') void run()
  }

  return {
    unsent: () => state,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async add(items) {
      const here = new Set([
        ...stored,
        ...state.unsent.map(({ id }) => id),
        ...state.refused.map(({ item }) => item.id),
      ])
      const fresh: DeckItem[] = []
      for (const item of items) {
        if (!here.has(item.id)) fresh.push(item)
        here.add(item.id)
      }
      if (fresh.length === 0) return
      change({ unsent: [...state.unsent, ...fresh] })
      start()
    },
    sendNow: run,
    async mend(id, replacement) {
      change(mend(state, id, replacement))
      start()
    },
    async discard(id) {
      const { held, gone } = discard(state, id)
      if (gone.length > 0) change(held)
      return gone
    },
  }
}
