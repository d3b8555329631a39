'use client'

import { lazy, Suspense, useSyncExternalStore } from 'react'
import { Message } from './message'

const DeckClient = lazy(() => import('../deck-client'))

const never = () => () => {}
const opening = <Message title="Opening the deck…" />

/** Holds the place until the browser has taken over: nothing of the deck is made on the server. */
export function DeckShell() {
  const inBrowser = useSyncExternalStore(
    never,
    () => true,
    () => false,
  )
  return inBrowser ? (
    <Suspense fallback={opening}>
      <DeckClient />
    </Suspense>
  ) : (
    opening
  )
}
