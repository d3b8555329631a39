import { useEffect, useSyncExternalStore } from 'react'

const place = 'plumbline-deck-hand'
const listeners = new Set<() => void>()

function read(): boolean {
  try {
    return window.localStorage.getItem(place) === 'left'
  } catch {
    return false
  }
}

function write(left: boolean): void {
  try {
    window.localStorage.setItem(place, left ? 'left' : 'right')
  } catch {
    // A browser that stores nothing stays right-handed.
  }
  for (const listener of listeners) listener()
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Whether this phone is held in the left hand, and how to say so. It belongs to the phone, not to the coach. */
export function useHand(): { readonly left: boolean; readonly change: (left: boolean) => void } {
  const left = useSyncExternalStore(subscribe, read)
  useEffect(() => {
    // The style sheet moves what a thumb needs to its side.
    document.documentElement.dataset.hand = left ? 'left' : 'right'
  }, [left])
  return { left, change: write }
}
