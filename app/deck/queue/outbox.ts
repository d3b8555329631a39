import type { Held } from './steps'

/** Where the queue keeps what it holds. Behind it stands the device's own store, or only the page. */
export interface Outbox {
  /** Takes one step on what is held, all of it or nothing, and answers what is held then. Rejects when that could not be kept: nothing changed. */
  change(step: (held: Held) => Held): Promise<Held>
  /** Tells of changes that another page made; answers how to stop listening. */
  subscribe(listener: () => void): () => void
}

/** An outbox that goes with the page: for tests, and for a browser that stores nothing. */
export function memoryOutbox(): Outbox {
  let held: Held = { unsent: [], refused: [] }
  return {
    async change(step) {
      held = step(held)
      return held
    },
    subscribe: () => () => {},
  }
}
