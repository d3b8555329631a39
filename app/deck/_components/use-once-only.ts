import { type MouseEvent, useRef } from 'react'

/** How soon (ms) and how near (px) a tap is the one before it again: wet fingers tap twice. */
const same = { within: 350, near: 24 } as const

/**
 * For `onClickCapture`: lets the first of two taps on one spot through. The second would take the rating back, or rate the
 * criterion that has just come up in its place, unread. Keys are let through.
 */
export function useOnceOnly(): (event: MouseEvent) => void {
  const last = useRef<{ at: number; x: number; y: number } | null>(null)
  return (event) => {
    if (event.detail === 0) return
    const tap = { at: event.timeStamp, x: event.clientX, y: event.clientY }
    const before = last.current
    last.current = tap
    if (!before || tap.at - before.at > same.within) return
    if (Math.hypot(tap.x - before.x, tap.y - before.y) > same.near) return
    event.preventDefault()
    event.stopPropagation()
  }
}
