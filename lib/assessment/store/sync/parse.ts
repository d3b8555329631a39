import { type DeckItem, itemSchema } from '../../deck/contract'
import { type Refusal, refusal } from '../../deck/refusal'

/** An item of a batch by its id, or why it is none. */
export type Parsed =
  | { readonly id: string; readonly item: DeckItem }
  | { readonly id: string; readonly item: null; readonly refusal: Refusal }

/** An item by itself: a malformed one is refused at its field and holds back no other. */
export function parseItem(raw: unknown, index: number): Parsed {
  const given = typeof raw === 'object' && raw !== null && 'id' in raw ? raw.id : null
  const id = typeof given === 'string' ? given.slice(0, 64) : `item ${index + 1}`
  const result = itemSchema.safeParse(raw)
  if (result.success) return { id: result.data.id, item: result.data }
  const issue = result.error.issues[0]
  return {
    id,
    item: null,
    refusal: refusal('malformed', issue?.message ?? 'not an item', issue?.path.join('.') || 'item'),
  }
}
