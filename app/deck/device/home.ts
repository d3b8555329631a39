import type { DeckQueue } from '../queue/deck-queue'
import { memoryOutbox } from '../queue/outbox'
import { openQueue } from '../queue/outbox-queue'
import type { Send } from '../queue/transport'
import type { DeckState } from '../state/deck-state'
import { restored } from '../state/restored'
import { alone, deviceOutbox } from './device-outbox'
import { findLastSent, findMarks, keepMarks, noteContact, tidyDevice } from './keeping'

/** A coach's deck on this device, as it was left. */
export interface Home {
  readonly coach: string
  readonly queue: DeckQueue
  readonly left: DeckState
  /** False where the browser stores nothing: all goes with the page. */
  readonly durable: boolean
  /** Items of others that wait here until those sign in again. */
  readonly othersWaiting: number
  readonly keepMarks: (state: DeckState) => void
}

/** Writes the newest value at a time: what came in between is overtaken. A write that fails is made up for by the next. */
function newestOnly<Value>(write: (value: Value) => Promise<void>): (value: Value) => void {
  let next: { value: Value } | null = null
  let busy = false
  const work = async () => {
    busy = true
    while (next) {
      const { value } = next
      next = null
      await write(value).catch(() => {})
    }
    busy = false
  }
  return (value) => {
    next = { value }
    if (!busy) void work()
  }
}

function noteAnswers(coach: string, queue: DeckQueue): void {
  let noted = queue.unsent().lastSentAt
  queue.subscribe(() => {
    const { lastSentAt } = queue.unsent()
    if (lastSentAt === noted || lastSentAt === null) return
    noted = lastSentAt
    void noteContact(coach, lastSentAt, { lastSentAt }).catch(() => {})
  })
}

/** Opens the coach's outbox and marks; of others nothing is read but how many items wait. */
export async function openHome(coach: string, send: Send): Promise<Home> {
  try {
    const othersWaiting = await tidyDevice(coach, Date.now())
    // A phone without any room left still has an outbox to be sent.
    await noteContact(coach, Date.now()).catch(() => {})
    const [lastSentAt, marks] = await Promise.all([findLastSent(coach), findMarks(coach)])
    const queue = await openQueue(deviceOutbox(coach), send, { alone, lastSentAt })
    noteAnswers(coach, queue)
    const { unsent, refused } = queue.unsent()
    const left = restored(marks, [...refused.map(({ item }) => item), ...unsent], Date.now())
    // Asks the browser not to clear what is here when it wants room; some ask the coach, most decide by themselves.
    void navigator.storage?.persist?.()
    const keep = newestOnly((state: DeckState) => keepMarks(coach, { markedAt: Date.now(), state }))
    return { coach, queue, left, durable: true, othersWaiting, keepMarks: keep }
  } catch {
    const queue = await openQueue(memoryOutbox(), send)
    return { coach, queue, left: restored(null, [], Date.now()), durable: false, othersWaiting: 0, keepMarks: () => {} }
  }
}
