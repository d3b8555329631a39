import type { DeckItem } from '@/lib/assessment/deck/contract'

/** Ids that must be known to the server before this item can be: its call, its attempt, what it supersedes. */
export function parentsOf(item: DeckItem): readonly string[] {
  switch (item.kind) {
    case 'call':
      return []
    // Nothing may hold an incident back, not even an attempt that is refused.
    case 'incident':
      return []
    case 'attempt':
      return item.call ? [item.call.id] : []
    case 'observation':
      return item.supersedes ? [item.attempt, item.supersedes.id] : [item.attempt]
  }
}

/** Ids among `items` that rest on `id`, at any depth; `items` hold parents before children. */
export function dependantsOf(id: string, items: readonly DeckItem[]): ReadonlySet<string> {
  const found = new Set<string>()
  for (const item of items) if (parentsOf(item).some((parent) => parent === id || found.has(parent))) found.add(item.id)
  return found
}

/** The item with every reference to `from` turned to `to`; the same object when it has none. */
export function repoint(item: DeckItem, from: string, to: string): DeckItem {
  if (from === to || !parentsOf(item).includes(from)) return item
  if (item.kind === 'attempt' && item.call) return { ...item, call: { ...item.call, id: to } }
  if (item.kind !== 'observation') return item
  return {
    ...item,
    attempt: item.attempt === from ? to : item.attempt,
    supersedes: item.supersedes?.id === from ? { ...item.supersedes, id: to } : item.supersedes,
  }
}
