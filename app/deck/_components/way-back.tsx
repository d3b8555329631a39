import type { ReactNode } from 'react'
import { type Route, writeRoute } from '../state/address'
import { goInstead } from './use-route'

interface WayBackProps {
  readonly to: Route
  readonly className: string
  readonly children: ReactNode
}

/** A link back: it takes the place of this screen in the history instead of adding to it. */
export function WayBack({ to, className, children }: WayBackProps) {
  return (
    <a
      className={className}
      href={writeRoute(to)}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return
        event.preventDefault()
        goInstead(to)
      }}
    >
      {children}
    </a>
  )
}
