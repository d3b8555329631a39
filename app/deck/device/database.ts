import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { DeckSnapshot } from '@/lib/assessment/deck/contract'
import type { KeptMarks } from '../state/restored'
import type { OutboxRecord } from './records'

/** When a coach's deck was last used here, heard from the server and was answered a batch; device clock. */
export interface Contact {
  readonly coach: string
  readonly usedAt: number
  readonly heardAt: number | null
  readonly lastSentAt: number | null
}

/** What the device keeps. Every record names the account that it belongs to. */
export interface DeckSchema extends DBSchema {
  outbox: { key: [coach: string, id: string]; value: OutboxRecord }
  snapshots: { key: string; value: { readonly coach: string; readonly snapshot: DeckSnapshot } }
  marks: { key: string; value: KeptMarks & { readonly coach: string; readonly version: number } }
  contacts: { key: string; value: Contact }
}

export type DeckDatabase = IDBPDatabase<DeckSchema>

let open: Promise<DeckDatabase> | null = null

/** The device's database, opened once a page. Rejects where the browser keeps none. */
export function deckDatabase(): Promise<DeckDatabase> {
  const forget = () => {
    open = null
  }
  open ??= openDB<DeckSchema>('plumbline-deck', 1, {
    upgrade(database) {
      database.createObjectStore('outbox', { keyPath: ['coach', 'id'] })
      for (const store of ['snapshots', 'marks', 'contacts'] as const)
        database.createObjectStore(store, { keyPath: 'coach' })
    },
    // A newer deck in another page wants to change the stores: this one opens them again when it needs them.
    blocking(_current, _blocked, event) {
      forget()
      if (event.target instanceof IDBDatabase) event.target.close()
    },
    terminated: forget,
  }).catch((error: unknown) => {
    forget()
    throw error
  })
  return open
}

/** All records of a coach in the outbox. */
export const ofCoach = (coach: string): IDBKeyRange => IDBKeyRange.bound([coach], [coach, []])
