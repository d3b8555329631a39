import type { DeckItem } from '@/lib/assessment/deck/contract'
import type { Send, SendResult } from './transport'

/** Milliseconds: the first wait after a failure, the longest, and when a try without an answer is given up. */
export const patience = { first: 1000, longest: 60_000, giveUp: 20_000 } as const

/** How long to wait after so many failures in a row: half is fixed, half random in [0, 1), so that many phones do not come back at once. */
export function retryDelay(failures: number, random: number): number {
  const longest = Math.min(patience.longest, patience.first * 2 ** failures)
  return Math.round(longest * (0.5 + random / 2))
}

/** One try, given up after a while: a phone between two networks may never hear that its request died. */
export async function trySend(send: Send, batch: readonly DeckItem[]): Promise<SendResult> {
  const controller = new AbortController()
  let timer: ReturnType<typeof setTimeout> | undefined
  const silence = new Promise<SendResult>((resolve) => {
    timer = setTimeout(() => {
      resolve({ kind: 'unreachable', message: 'The server did not answer in time.' })
      controller.abort()
    }, patience.giveUp)
  })
  try {
    return await Promise.race([send(batch, controller.signal), silence])
  } catch {
    return { kind: 'unreachable', message: 'The server could not be reached.' }
  } finally {
    clearTimeout(timer)
  }
}
