import { useSyncExternalStore } from 'react'
import { type Route, readRoute, writeRoute } from '../state/address'

function onHash(listener: () => void): () => void {
  window.addEventListener('hashchange', listener)
  return () => window.removeEventListener('hashchange', listener)
}

/** Where the deck is, from the address: the phone's back button leads back. */
export const useRoute = (): Route => readRoute(useSyncExternalStore(onHash, () => window.location.hash))

/** Goes to a route and leaves the present one behind it. */
export const go = (route: Route): void => {
  window.location.hash = writeRoute(route)
}

/** Goes to a route in place of the present one, so that the phone's back button does not return to what is done. */
export const goInstead = (route: Route): void => window.location.replace(writeRoute(route))
