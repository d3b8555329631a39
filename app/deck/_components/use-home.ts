import { useEffect, useState } from 'react'
import { type Home, openHome } from '../device/home'
import { postTo } from '../queue/transport'

/** The coach's deck on this device; null until it is open. */
export function useHome(coach: string | undefined): Home | null {
  const [home, setHome] = useState<Home | null>(null)
  useEffect(() => {
    if (coach === undefined) return
    let left = false
    void openHome(coach, postTo('/api/deck/sync', coach)).then((opened) => {
      if (!left) setHome(opened)
    })
    return () => {
      left = true
    }
  }, [coach])
  return home?.coach === coach ? home : null
}
