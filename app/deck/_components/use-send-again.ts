import { useEffect } from 'react'
import type { DeckQueue } from '../queue/deck-queue'

/** Does not wait for the next retry when the network is back, or the coach is: she may have signed in on another page. */
export function useSendAgain(queue: DeckQueue): void {
  useEffect(() => {
    const again = () => void queue.sendNow()
    const back = () => {
      if (document.visibilityState === 'visible' && queue.unsent().sending !== 'idle') again()
    }
    window.addEventListener('online', again)
    document.addEventListener('visibilitychange', back)
    return () => {
      window.removeEventListener('online', again)
      document.removeEventListener('visibilitychange', back)
    }
  }, [queue])
}
