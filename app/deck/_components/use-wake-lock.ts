import { useEffect } from 'react'

/** Keeps the screen on while attempts are rated: wet fingers unlock no phone. The browser lets go of it when the page is hidden. */
export function useWakeLock(): void {
  useEffect(() => {
    if (!('wakeLock' in navigator)) return
    let lock: Promise<WakeLockSentinel | null> = Promise.resolve(null)
    const ask = () => {
      // Refused on a low battery; then the phone sleeps as it always does.
      if (document.visibilityState === 'visible') lock = navigator.wakeLock.request('screen').catch(() => null)
    }
    ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      document.removeEventListener('visibilitychange', ask)
      void lock.then((held) => held?.release())
    }
  }, [])
}
