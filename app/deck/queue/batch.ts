import type { DeckBatch, DeckItem } from '@/lib/assessment/deck/contract'
import { batchLimit, deckVersion } from '@/lib/assessment/deck/limits'

const encoder = new TextEncoder()
const bytesOf = (value: unknown): number => encoder.encode(JSON.stringify(value)).length

/** Bytes of the envelope around the items, with the longest instant a clock can say. */
const envelopeBytes = bytesOf({ v: deckVersion, sentAt: 8_640_000_000_000_000, items: [] })

/** The body that is posted. `sentAt` is the device's clock, from which the server measures its offset. */
export const envelope = (items: readonly DeckItem[], sentAt: number): DeckBatch => ({
  v: deckVersion,
  sentAt,
  items: [...items],
})

/** The first items in order that fit into one batch: at most `most` of them and the byte limit. Empty when even the first is too large. */
export function takeBatch(items: readonly DeckItem[], most: number = batchLimit.items): readonly DeckItem[] {
  let bytes = envelopeBytes
  const batch: DeckItem[] = []
  for (const item of items.slice(0, Math.min(most, batchLimit.items))) {
    bytes += bytesOf(item) + 1 // the comma
    if (bytes > batchLimit.bytes) break
    batch.push(item)
  }
  return batch
}
