import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'
import type { Held } from '../queue/steps'

/** One item as the device keeps it. `answer` null = it waits; else it was refused with that answer. */
export interface OutboxRecord {
  /** The account that recorded it: nobody else sees it, nobody else's session sends it. */
  readonly coach: string
  readonly id: string
  /** Place among those that wait, or among those that were refused. */
  readonly order: number
  readonly item: DeckItem
  readonly answer: ItemAnswer | null
}

/** The queue's view of a coach's records, each list in its order. */
export function heldOf(records: readonly OutboxRecord[]): Held {
  const sorted = [...records].sort((a, b) => a.order - b.order)
  return {
    unsent: sorted.flatMap(({ item, answer }) => (answer === null ? [item] : [])),
    refused: sorted.flatMap(({ item, answer }) => (answer === null ? [] : [{ item, answer }])),
  }
}

interface Changes {
  readonly put: readonly OutboxRecord[]
  readonly drop: readonly string[]
}

/** What to write so that the records hold `held`. A record that stays as it was is not written again. */
export function changesTo(coach: string, records: readonly OutboxRecord[], held: Held): Changes {
  const before = new Map(records.map((record) => [record.id, record]))
  const put: OutboxRecord[] = []
  const numbered = (entries: readonly { readonly item: DeckItem; readonly answer: ItemAnswer | null }[]) => {
    let last = 0
    for (const { item, answer } of entries) {
      const old = before.get(item.id)
      const order = old && old.order > last ? old.order : last + 1
      last = order
      if (old?.item !== item || old.answer !== answer || old.order !== order)
        put.push({ coach, id: item.id, order, item, answer })
    }
  }
  numbered(held.unsent.map((item) => ({ item, answer: null })))
  numbered(held.refused)
  const after = new Set([...held.unsent.map(({ id }) => id), ...held.refused.map(({ item }) => item.id)])
  return { put, drop: records.flatMap(({ id }) => (after.has(id) ? [] : [id])) }
}
