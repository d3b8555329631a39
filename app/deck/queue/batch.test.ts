import { describe, expect, it } from 'vitest'
import { batchSchema, type DeckItem } from '@/lib/assessment/deck/contract'
import { batchLimit } from '@/lib/assessment/deck/limits'
import { anAttempt, anObservation, deckNow } from '@/tests/support/deck-items'
import { envelope, takeBatch } from './batch'

const bytes = (items: readonly DeckItem[]) => new TextEncoder().encode(JSON.stringify(envelope(items, deckNow))).length

describe('takeBatch', () => {
  it('takes the first items, at most as many as the server reads', () => {
    const items = Array.from({ length: 70 }, () => anAttempt())
    expect(takeBatch(items)).toEqual(items.slice(0, batchLimit.items))
    expect(takeBatch(items, 3)).toEqual(items.slice(0, 3))
    expect(takeBatch(items, 1000)).toHaveLength(batchLimit.items)
    expect(takeBatch([])).toEqual([])
  })

  it('stays within the bytes of the body, counted as UTF-8, and takes as many as fit', () => {
    // Three bytes a character: counting characters would send a body three times too large.
    const items = Array.from({ length: 50 }, (_, at) => anObservation(anAttempt().id, { note: '水'.repeat(2000 - at) }))
    const batch = takeBatch(items)
    expect(batch.length).toBeLessThan(50)
    expect(bytes(batch)).toBeLessThanOrEqual(batchLimit.bytes)
    expect(bytes(items.slice(0, batch.length + 1))).toBeGreaterThan(batchLimit.bytes - 100)
  })

  it('is empty when not even the first fits', () => {
    expect(takeBatch([anObservation(anAttempt().id, { note: 'x'.repeat(batchLimit.bytes) })])).toEqual([])
  })

  it('makes an envelope that the contract accepts', () => {
    expect(batchSchema.safeParse(envelope([anAttempt()], deckNow)).success).toBe(true)
  })
})
