import type { DeckItem } from '@/lib/assessment/deck/contract'
import { batchLimit } from '@/lib/assessment/deck/limits'
import { takeBatch } from './batch'
import type { DeckQueue, QueueState } from './deck-queue'
import type { Outbox } from './outbox'
import {
  addFresh,
  discard,
  type Held,
  mend,
  partsLeftOut,
  refuse,
  refusedHere,
  setAsideChildren,
  settle,
  withoutStored,
} from './steps'
import type { Send, SendResult } from './transport'
import { retryDelay, trySend } from './try-send'

interface QueueOptions {
  /** Answers a number in [0, 1) that spreads the retries of many phones. */
  readonly random?: () => number
  /** Runs the work while no other page of this browser runs its own. */
  readonly alone?: (work: () => Promise<void>) => Promise<void>
  readonly lastSentAt?: number | null
}

const noRoom = 'There is no room left on this phone, so it was not kept. Free some room, then keep it again.'
const noStore = 'This phone could not keep it. What you marked is still here: try again.'

const sayUnkept = (error: unknown): string =>
  error instanceof Error && error.name === 'QuotaExceededError' ? noRoom : noStore

/** The queue over an outbox. One sender at a time, batches in order; an item leaves only when the server has answered for it. */
export async function openQueue(outbox: Outbox, send: Send, options: QueueOptions = {}): Promise<DeckQueue> {
  const { random = Math.random, alone = (work) => work(), lastSentAt = null } = options
  const unchanged = (held: Held): Held => held
  let state: QueueState = {
    ...(await outbox.change(unchanged)),
    sending: 'idle',
    lastSentAt,
    retryAt: null,
    problem: null,
    keptWithout: [],
    unkept: null,
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

  const take = async (step: (held: Held) => Held, changes: Partial<QueueState> = {}): Promise<Held> => {
    const held = await outbox.change(step)
    change({ ...held, ...changes })
    return held
  }

  /** What the coach recorded: kept before this resolves, or she is told why not. */
  const keep = async (step: (held: Held) => Held): Promise<void> => {
    try {
      await take(step, { unkept: null })
    } catch (error) {
      change({ unkept: sayUnkept(error) })
      throw error
    }
    start()
  }

  /** Ends a run before telling the listeners, so that one that asks for another try gets it. */
  const stop = (changes: Partial<QueueState>): void => {
    running = null
    change(changes)
  }

  const retryLater = (problem: string): void => {
    const delay = retryDelay(failures, random())
    failures += 1
    timer = setTimeout(() => void run(), delay)
    stop({ sending: 'waiting', retryAt: Date.now() + delay, problem })
  }

  /** What follows from one try; false when sending stops for now. */
  const digest = async (batch: readonly DeckItem[], result: SendResult): Promise<boolean> => {
    if (result.kind === 'signed out') {
      stop({ sending: 'signed out', problem: result.message })
      return false
    }
    if (result.kind === 'unreachable') {
      retryLater(result.message)
      return false
    }
    if (result.kind === 'rejected') {
      const refusals = batch.map((item) => refusedHere(item, 'malformed', result.message))
      if (batch.length > 1) most = Math.ceil(batch.length / 2)
      else await take((held) => refuse(held, refusals))
      return true
    }
    const { stored: known, refused, answered } = settle(batch, result.answers)
    if (answered === 0) {
      retryLater('The server answered, but for none of the items.')
      return false
    }
    for (const id of known) stored.add(id)
    failures = 0
    most = batchLimit.items
    const keptWithout = [...state.keptWithout, ...partsLeftOut(batch, result.answers)]
    await take((held) => refuse(withoutStored(held, known), refused), { lastSentAt: Date.now(), keptWithout })
    return true
  }

  const sendAll = async (): Promise<void> => {
    for (;;) {
      const held = await take(setAsideChildren)
      const [first] = held.unsent
      if (!first) break
      const batch = takeBatch(held.unsent, most)
      if (batch.length === 0) {
        await take((now) => refuse(now, [refusedHere(first, 'malformed', 'It is too large to be sent.')]))
        continue
      }
      change({ sending: 'sending', retryAt: null })
      if (!(await digest(batch, await trySend(send, batch)))) return
    }
    stop({ sending: 'idle', retryAt: null, problem: null })
  }

  const run = (): Promise<void> => {
    clearTimeout(timer)
    running ??= Promise.resolve()
      .then(() => alone(sendAll))
      .catch(() => retryLater('The store of this phone did not answer.'))
    return running
  }

  /** Starts unless a retry or a sign-in is awaited: a new rating does not hurry a dead network. */
  const start = (): void => {
    if (state.sending === 'idle' && state.unsent.length > 0) void run()
  }

  outbox.subscribe(() => void take(unchanged).then(start, () => {}))
  start()
  return {
    unsent: () => state,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    add: (items) => keep((held) => addFresh(held, items, stored)),
    sendNow: run,
    told: () => change({ keptWithout: [] }),
    mend: (id, replacement) => keep((held) => mend(held, id, replacement)),
    async discard(id) {
      let gone: readonly string[] = []
      await keep((held) => {
        const rest = discard(held, id)
        gone = rest.gone
        return rest.held
      })
      return gone
    },
  }
}
