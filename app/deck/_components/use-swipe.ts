import { type TouchEvent, useRef } from 'react'
import { swipeStep, type Touch } from '../state/swipe'

const pointOf = ({ changedTouches }: TouchEvent): Touch | null => {
  const touch = changedTouches.item(0)
  return touch ? { x: touch.clientX, y: touch.clientY } : null
}

/** Handlers for a page that a swipe leads through: `step` gets 1 or -1. */
export function useSwipe(step: (by: 1 | -1) => void) {
  const began = useRef<Touch | null>(null)
  return {
    onTouchStart: (event: TouchEvent) => {
      began.current = event.touches.length === 1 ? pointOf(event) : null
    },
    onTouchEnd: (event: TouchEvent) => {
      const ended = pointOf(event)
      const by = began.current && ended ? swipeStep(began.current, ended, window.innerWidth) : 0
      began.current = null
      if (by !== 0) step(by)
    },
  }
}
