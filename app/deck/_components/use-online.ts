import { useSyncExternalStore } from 'react'

function onChange(listener: () => void): () => void {
  window.addEventListener('online', listener)
  window.addEventListener('offline', listener)
  return () => {
    window.removeEventListener('online', listener)
    window.removeEventListener('offline', listener)
  }
}

/** Whether the browser believes in a network; false is certain, true is not. */
export const useOnline = (): boolean => useSyncExternalStore(onChange, () => navigator.onLine)
