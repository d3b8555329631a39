import type { KeyboardEvent } from 'react'
import { pressesOnce } from '../clip/presses-once'

/** What a key asks for; Shift with an arrow is written `Shift+ArrowLeft`. `held`: it is held down. */
export type KeyActs = ReadonlyMap<string, (held: boolean) => void>

/** Keys that go on acting while they are held down: those that move by a little. */
const movesOn = /Arrow(Left|Right)$|^Shift\+Arrow|^[-+=[\],.]$/

/** Fields that need their keys themselves, and the keys that a button needs. */
function keepsKey(target: EventTarget, key: string): boolean {
  if (target instanceof HTMLSelectElement) return true
  if (target instanceof HTMLInputElement) {
    const scrubs = target.dataset.scrub !== undefined
    return target.type === 'range' ? !scrubs : key === ' '
  }
  return key === ' ' && target instanceof HTMLElement && ['BUTTON', 'SUMMARY', 'A'].includes(target.tagName)
}

/** Keys work while the focus is anywhere in the comparison. */
export const onKeys = (acts: KeyActs) => (event: KeyboardEvent) => {
  const { shiftKey, target, repeat } = event
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key
  if (event.altKey || event.ctrlKey || event.metaKey || keepsKey(target, key)) return
  if (pressesOnce(event)) event.preventDefault()
  const name = shiftKey && key.startsWith('Arrow') ? `Shift+${key}` : key
  const act = acts.get(name)
  if (!act) return
  event.preventDefault()
  if (!repeat || movesOn.test(name)) act(repeat)
}
