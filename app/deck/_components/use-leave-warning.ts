import { useEffect } from 'react'

/** The browser asks before the page goes, while something would be lost with it. */
export function useLeaveWarning(wouldLose: boolean): void {
  useEffect(() => {
    if (!wouldLose) return
    const warn = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', warn)
    return () => window.removeEventListener('beforeunload', warn)
  }, [wouldLose])
}
