import type { Outbox } from '../queue/outbox'
import { deckDatabase, ofCoach } from './database'
import { changesTo, heldOf } from './records'

const channelName = 'plumbline-deck-outbox'

/** A coach's outbox on this device. What a step changed is on the disk, not only handed to the system, when its promise resolves. */
export function deviceOutbox(coach: string): Outbox {
  const channel = new BroadcastChannel(channelName)
  const listeners = new Set<() => void>()
  channel.onmessage = ({ data }) => {
    if (data === coach) for (const listener of listeners) listener()
  }
  return {
    async change(step) {
      const database = await deckDatabase()
      const transaction = database.transaction('outbox', 'readwrite', { durability: 'strict' })
      const records = await transaction.store.getAll(ofCoach(coach))
      const held = heldOf(records)
      const after = step(held)
      const { put, drop } = changesTo(coach, records, after)
      await Promise.all([
        ...put.map((record) => transaction.store.put(record)),
        ...drop.map((id) => transaction.store.delete([coach, id])),
        transaction.done,
      ])
      if (put.length + drop.length > 0) channel.postMessage(coach)
      return after
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

/** One sender in this browser: whoever comes second waits. Without the lock a batch may go twice, which the server takes as known. */
export async function alone(work: () => Promise<void>): Promise<void> {
  if ('locks' in navigator) await navigator.locks.request('plumbline-deck-sender', work)
  else await work()
}
