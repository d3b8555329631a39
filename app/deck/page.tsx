import type { Metadata } from 'next'
import { DeckShell } from './_components/deck-shell'

export const metadata: Metadata = { title: 'Deck', icons: { icon: '/icon.svg', apple: '/icons/bob-apple-180.png' } }

/** The same for everybody: who is signed in and what they may see comes with the snapshot. */
export default function DeckPage() {
  return <DeckShell />
}
