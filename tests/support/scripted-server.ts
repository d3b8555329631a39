import { vi } from 'vitest'
import type { Send, SendResult } from '@/app/deck/queue/transport'
import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'

type Script = (items: readonly DeckItem[]) => SendResult | Promise<SendResult>

export const accept = (items: readonly DeckItem[]): SendResult => ({
  kind: 'answered',
  answers: items.map(({ id }) => ({ id, result: 'accepted' })),
})

export const unreachable: SendResult = { kind: 'unreachable', message: 'no network' }

/** For tests: answers each try with the next script, the last one for ever, and remembers what it was sent. */
export function scriptedServer(...scripts: readonly Script[]) {
  const tries: (readonly DeckItem[])[] = []
  const send: Send = async (items) => {
    tries.push(items)
    const script = scripts[Math.min(tries.length, scripts.length) - 1] ?? accept
    return script(items)
  }
  return { send, tries }
}

/** The ids of items, in their order. */
export const ids = (items: readonly { readonly id: string }[]) => items.map(({ id }) => id)

/** Half of the wait is fixed, half is random: with 1 the wait is the longest, with 0 the shortest. */
export const longest = () => 1
/** Lets what is due now happen. */
export const settleDown = () => vi.advanceTimersByTimeAsync(0)

/** Answers one id as told and accepts the others; children in the same batch are refused with their parent, as the server does. */
export const refusing =
  (id: string, answer: Partial<ItemAnswer> = {}) =>
  (items: readonly DeckItem[]): SendResult => ({
    kind: 'answered',
    answers: items.map((item) =>
      item.id === id
        ? {
            id,
            result: 'refused',
            code: 'malformed',
            message: 'a rating is 0, 1, 2, 3 or 4',
            field: 'ratings',
            ...answer,
          }
        : item.kind === 'observation' && item.attempt === id
          ? { id: item.id, result: 'refused', code: 'parent refused', message: 'its attempt was refused' }
          : { id: item.id, result: 'accepted' },
    ),
  })
