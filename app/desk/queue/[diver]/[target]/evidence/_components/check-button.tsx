'use client'

import { useActionState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { checkAction } from '@/app/desk/questions/actions'

interface CheckButtonProps {
  readonly moment: string
  readonly kind: 'accepted' | 'not reachable'
  /** Where to go on when it is kept. */
  readonly next: string
  /** The one key that presses it. */
  readonly shortcut: string
  readonly tone: 'go' | 'plain'
  readonly children: string
}

/** One press that says what a moment is, and goes on to the next. */
export function CheckButton({ moment, kind, next, shortcut, tone, children }: CheckButtonProps) {
  const [state, send, pending] = useActionState(checkAction, {})
  return (
    <form action={send} className="flex flex-wrap items-center gap-3">
      {Object.entries({ moment, kind, next }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Button tone={tone} disabled={pending} data-shortcut={shortcut}>
        {children}
      </Button>
      {state.message && !state.done ? (
        <p role="alert" className="text-13 font-bold text-coral">
          Not kept: {state.message}
        </p>
      ) : null}
    </form>
  )
}
