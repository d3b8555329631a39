'use client'

import { useState, useTransition } from 'react'
import type { Answer } from './marks/marks-view'

/** What was said last: that something was kept, or why it was not. */
export interface Said {
  readonly tone: 'kept' | 'refused'
  readonly text: string
}

const unreachable = 'The server was not reached. Nothing was kept; what you see is still here. Try again.'

/** What the server answered, in words; `kept` says what it kept. */
export const saidOf = (answer: Answer, kept: string): Said =>
  answer.ok ? { tone: 'kept', text: kept } : { tone: 'refused', text: answer.message }

/** Sends things to the server, one after the other, and keeps what it said last. `then` is told whether it was kept. */
export function useSending() {
  const [said, setSaid] = useState<Said | null>(null)
  const [pending, start] = useTransition()
  const send = (ask: () => Promise<Said>, then?: (kept: boolean) => void) =>
    start(async () => {
      const answer = await ask().catch((): Said => ({ tone: 'refused', text: unreachable }))
      setSaid(answer)
      then?.(answer.tone === 'kept')
    })
  return { said, pending, send }
}
