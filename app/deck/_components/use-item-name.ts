import type { DeckItem } from '@/lib/assessment/deck/contract'
import { placeFacts } from '@/lib/curriculum/place'
import { useDeck } from './deck-context'

const kinds = { call: 'call', attempt: 'attempt', observation: 'ratings', incident: 'incident' } as const

/** Names an item so that its coach knows it again, e.g. `Mara · 101C 1 m · ratings`. */
export function useItemName(): (item: DeckItem) => string {
  const { roster, state, waiting } = useDeck()
  return (item) => {
    const all = [
      ...waiting.unsent,
      ...waiting.refused.map((entry) => entry.item),
      ...state.seen.map((entry) => entry.attempt),
    ]
    const subject =
      item.kind === 'observation' ? all.find((other) => other.kind === 'attempt' && other.id === item.attempt) : item
    if (!subject || subject.kind === 'observation') return kinds[item.kind]
    const diver = roster.divers.get(subject.diver)?.shortName ?? 'unknown diver'
    const skill = roster.curriculum.skills.get(subject.skill)
    const what =
      item.kind === 'call' ? `call of ${item.count}` : item.kind === 'incident' ? item.what : kinds[item.kind]
    return `${diver} · ${skill?.dive ?? skill?.title ?? subject.skill} ${placeFacts[subject.place].label} · ${what}`
  }
}
