import type { Page } from '@playwright/test'

const stores = ['contacts', 'marks', 'outbox', 'snapshots'] as const
type Stores = Record<(typeof stores)[number], string[]>

/** Whose records stand in each store of the deck on this device, as the browser itself reads them. */
export const whoseRecords = (page: Page): Promise<Stores> =>
  page.evaluate(async (names) => {
    const asked = <Value>(request: IDBRequest<Value>) =>
      new Promise<Value>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const database = await asked(indexedDB.open('plumbline-deck'))
    const entries = names.map(async (name) => {
      const records: { coach: string }[] = await asked(database.transaction(name).objectStore(name).getAll())
      return [name, [...new Set(records.map(({ coach }) => coach))]]
    })
    const found = Object.fromEntries(await Promise.all(entries))
    database.close()
    return found
  }, stores)

/** Makes the deck of everybody on this device as old as that. */
export const age = (page: Page, days: number): Promise<void> =>
  page.evaluate(async (by) => {
    const request = indexedDB.open('plumbline-deck')
    await new Promise((resolve) => {
      request.onsuccess = resolve
    })
    const transaction = request.result.transaction('contacts', 'readwrite')
    const all = transaction.objectStore('contacts').getAll()
    all.onsuccess = () => {
      for (const contact of all.result)
        transaction.objectStore('contacts').put({ ...contact, usedAt: contact.usedAt - by * 86_400_000 })
    }
    await new Promise((resolve) => {
      transaction.oncomplete = resolve
    })
    request.result.close()
  }, days)
