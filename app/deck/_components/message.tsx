import type { ReactNode } from 'react'

/** The whole screen says one thing. */
export function Message({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <main id="main" className="deck-message">
      <h1 className="text-24">{title}</h1>
      {children}
    </main>
  )
}
