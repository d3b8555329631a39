import type { DeckItem } from '@/lib/assessment/deck/contract'
import type { Send, SendResult } from './transport'

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
