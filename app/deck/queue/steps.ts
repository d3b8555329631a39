import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'
import type { RefusedItem } from './deck-queue'
import { dependantsOf, parentsOf, repoint } from './lineage'

/** What waits and what was refused: the part of the queue that must not be lost. */
export interface Held {
  readonly unsent: readonly DeckItem[]
  readonly refused: readonly RefusedItem[]
}

/** Adds items after all that waits; one that is here already, or that the server is known to have, is a repeat and changes nothing. */
export function addFresh(held: Held, items: readonly DeckItem[], stored: ReadonlySet<string>): Held {
  const here = new Set([...stored, ...held.unsent.map(({ id }) => id), ...held.refused.map(({ item }) => item.id)])
  const fresh: DeckItem[] = []
  for (const item of items) {
    if (!here.has(item.id)) fresh.push(item)
    here.add(item.id)
  }
  return fresh.length > 0 ? { ...held, unsent: [...held.unsent, ...fresh] } : held
}

const parentRefused = 'It rests on something that the server refused; mend that first.'

/** An item refused without the server having seen it by itself. */
export const refusedHere = (item: DeckItem, code: ItemAnswer['code'], message: string): RefusedItem => ({
  item,
  answer: { id: item.id, result: 'refused', code, message },
})

/** Moves items that still wait to the refused ones; the rest keeps its order. */
export function refuse({ unsent, refused }: Held, entries: readonly RefusedItem[]): Held {
  const waiting = new Set(unsent.map(({ id }) => id))
  const moving = entries.filter(({ item }) => waiting.has(item.id))
  const ids = new Set(moving.map(({ item }) => item.id))
  return { unsent: unsent.filter((item) => !ids.has(item.id)), refused: [...refused, ...moving] }
}

/** Sets children of refused items aside with them: the server could only refuse them too. The same object when there are none. */
export function setAsideChildren(held: Held): Held {
  const lost = new Set(held.refused.map((entry) => entry.item.id))
  const children: RefusedItem[] = []
  for (const item of held.unsent) {
    if (!parentsOf(item).some((parent) => lost.has(parent))) continue
    lost.add(item.id)
    children.push(refusedHere(item, 'parent refused', parentRefused))
  }
  return children.length > 0 ? refuse(held, children) : held
}

/** What the answers say of a batch: the ids that the server has now, and what it refused. What was not answered is in neither. */
export function settle(
  batch: readonly DeckItem[],
  answers: readonly ItemAnswer[],
): { readonly stored: ReadonlySet<string>; readonly refused: readonly RefusedItem[]; readonly answered: number } {
  const byId = new Map(answers.map((answer) => [answer.id, answer]))
  const refused: RefusedItem[] = []
  const stored = new Set<string>()
  for (const item of batch) {
    const answer = byId.get(item.id)
    if (answer?.result === 'refused') refused.push({ item, answer })
    else if (answer) stored.add(item.id)
  }
  return { stored, refused, answered: stored.size + refused.length }
}

/** What the server has but for a part of it, and why. */
export const partsLeftOut = (batch: readonly DeckItem[], answers: readonly ItemAnswer[]) =>
  answers.flatMap(({ id, keptWithout }) => {
    const item = batch.find((one) => one.id === id)
    return item && keptWithout ? [{ item, message: keptWithout.message }] : []
  })

/** Takes out of the waiting items what the server has. */
export const withoutStored = (held: Held, stored: ReadonlySet<string>): Held => ({
  ...held,
  unsent: held.unsent.filter(({ id }) => !stored.has(id)),
})

/** Puts a refused item, as it was or changed, before all that waits, with those refused only because of it. */
export function mend(held: Held, id: string, replacement?: DeckItem): Held {
  const entry = held.refused.find(({ item }) => item.id === id)
  if (!entry) return held
  const mended = replacement ?? entry.item
  const below = dependantsOf(
    id,
    held.refused.map(({ item }) => item),
  )
  const goesAlong = ({ item, answer }: RefusedItem) => below.has(item.id) && answer.code === 'parent refused'
  const again = held.refused.filter((other) => other === entry || goesAlong(other)).map(({ item }) => item)
  const renamed = (item: DeckItem): DeckItem => (item.id === id ? mended : repoint(item, id, mended.id))
  return {
    unsent: [...again, ...held.unsent].map(renamed),
    refused: held.refused
      .filter(({ item }) => !again.includes(item))
      .map(({ item, answer }) => ({ item: renamed(item), answer })),
  }
}

/** Gives up a refused item with everything that rests on it. */
export function discard(held: Held, id: string): { readonly held: Held; readonly gone: readonly string[] } {
  if (!held.refused.some(({ item }) => item.id === id)) return { held, gone: [] }
  const gone = new Set([id, ...dependantsOf(id, [...held.refused.map(({ item }) => item), ...held.unsent])])
  return {
    held: {
      unsent: held.unsent.filter((item) => !gone.has(item.id)),
      refused: held.refused.filter(({ item }) => !gone.has(item.id)),
    },
    gone: [...gone],
  }
}
