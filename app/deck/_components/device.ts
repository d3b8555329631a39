import { v4, v7 } from 'uuid'

const place = 'plumbline-deck-device'

function remembered(): string {
  try {
    const known = window.localStorage.getItem(place)
    if (known) return known
    const fresh = v4()
    window.localStorage.setItem(place, fresh)
    return fresh
  } catch {
    // A browser that stores nothing is a new device each time.
    return v4()
  }
}

let device: string | null = null

/** Names this browser in what it records, so that two phones of one coach can be told apart. */
export function deviceId(): string {
  device ??= remembered()
  return device
}

/** A fresh UUIDv7: sorts by the time at which it was made. */
export const newId = (): string => v7()
