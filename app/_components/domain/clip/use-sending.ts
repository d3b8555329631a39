'use client'

import { useState, useTransition } from 'react'
import type { Answer } from './marks/marks-view'

/** What was said last: that something was kept, or why it was not. */
export interface Said {
  readonly tone: 'kept' | 'refused'
  readonly text: string
}

const unreachable = 'The server was not reached. Nothing was kept; what you see is still here. Try again.'

/** Sends one thing at a time to the server and keeps what it said. `send` answers whether it was kept. */
export function useSending() {
  const [said, setSaid] = useState<Said | null>(null)
  const [pending, start] = useTransition()
  const send = (ask: () => Promise<Answer>, kept: string, then?: () => void) =>
    start(async () => {
      const answer = await ask().catch((): Answer => ({ ok: false, message: unreachable }))
      setSaid(answer.ok ? { tone: 'kept', text: kept } : { tone: 'refused', text: answer.message })
      if (answer.ok) then?.()
    })
  return { said, pending, send }
}
