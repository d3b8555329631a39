import type { DeckSnapshot } from '@/lib/assessment/deck/contract'
import type { KeptMarks } from '../state/restored'
import { type Contact, deckDatabase } from './database'

/** Another number whenever the shape of the deck's state changes: marks of an older shape are not read. */
const marksVersion = 4
const unusedDays = 30

/** A snapshot from this device, with the time of the last contact; null when the coach has none here. */
export async function findSnapshot(coach: string): Promise<{ snapshot: DeckSnapshot; heardAt: number } | null> {
  const database = await deckDatabase()
  const [kept, contact] = await Promise.all([database.get('snapshots', coach), database.get('contacts', coach)])
  return kept && contact?.heardAt ? { snapshot: kept.snapshot, heardAt: contact.heardAt } : null
}

/** Keeps the snapshot for the next opening without a network, and notes the contact. */
export async function keepSnapshot(snapshot: DeckSnapshot, heardAt: number): Promise<void> {
  const coach = snapshot.coach.id
  await noteContact(coach, heardAt, { heardAt })
  await (await deckDatabase()).put('snapshots', { coach, snapshot })
}

/** Notes that the deck is used, and what was heard from the server. */
export async function noteContact(
  coach: string,
  now: number,
  heard: Partial<Pick<Contact, 'heardAt' | 'lastSentAt'>> = {},
): Promise<void> {
  const transaction = (await deckDatabase()).transaction('contacts', 'readwrite')
  const before = await transaction.store.get(coach)
  await transaction.store.put({ heardAt: null, lastSentAt: null, ...before, ...heard, coach, usedAt: now })
  await transaction.done
}

/** When the server last took a batch of this coach from here. */
export const findLastSent = async (coach: string): Promise<number | null> =>
  (await (await deckDatabase()).get('contacts', coach))?.lastSentAt ?? null

/** What the coach had marked when the page went; null when nothing was, or in a shape of old. */
export async function findMarks(coach: string): Promise<KeptMarks | null> {
  const kept = await (await deckDatabase()).get('marks', coach)
  return kept?.version === marksVersion ? kept : null
}

export async function keepMarks(coach: string, marks: KeptMarks): Promise<void> {
  await (await deckDatabase()).put('marks', { coach, version: marksVersion, ...marks })
}

/**
 * Wipes what nobody may see here any more: of everybody but the one who is signed in (null = nobody), and of whoever has not
 * used the deck for 30 days. What is unsent stays for the coach who recorded it. Answers how many items of others wait here.
 */
export async function tidyDevice(holder: string | null, now: number): Promise<number> {
  const database = await deckDatabase()
  const transaction = database.transaction(['outbox', 'snapshots', 'marks', 'contacts'], 'readwrite')
  const [snapshots, marks, contacts] = [
    transaction.objectStore('snapshots'),
    transaction.objectStore('marks'),
    transaction.objectStore('contacts'),
  ]
  const keys = await Promise.all([snapshots.getAllKeys(), marks.getAllKeys(), contacts.getAllKeys()])
  const waiting = (await transaction.objectStore('outbox').getAllKeys()).map(([coach]) => coach)
  for (const coach of new Set(keys.flat())) {
    const usedAt = (await contacts.get(coach))?.usedAt ?? 0
    if (coach === holder && now - usedAt < unusedDays * 86_400_000) continue
    await snapshots.delete(coach)
    if (waiting.includes(coach)) continue
    await marks.delete(coach)
    await contacts.delete(coach)
  }
  await transaction.done
  return waiting.filter((coach) => coach !== holder).length
}
