import { useDeck } from './deck-context'
import { when } from './when'

/** As of when the deck knows what it shows of divers: a stand-down since then is not on this phone. */
export function LastContact() {
  return <>Last contact with the server: {when(useDeck().heardAt)}.</>
}
