import type { ReactNode } from 'react'
import type { Route } from '../state/address'
import { SendState } from './send-state'
import { WayBack } from './way-back'

interface TopProps {
  readonly back: { readonly to: Route; readonly label: string } | null
  readonly children: ReactNode
}

/** The head of every screen, 56 px: the way back, where one is, and what has not been sent. */
export function Top({ back, children }: TopProps) {
  return (
    <header className="deck-top">
      {back ? (
        <WayBack className="deck-back" to={back.to}>
          <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
            <path d="M15 4L7 12l8 8" />
          </svg>
          <span className="sr-only">{back.label}</span>
        </WayBack>
      ) : null}
      <div className="deck-where">{children}</div>
      <SendState />
    </header>
  )
}
