import type { KeyboardEvent } from 'react'

/** What a key asks for; Shift with an arrow is written `Shift+ArrowLeft`. */
export type KeyActs = ReadonlyMap<string, () => void>

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
  const { key, shiftKey, target } = event
  if (event.altKey || event.ctrlKey || event.metaKey || keepsKey(target, key)) return
  const act = acts.get(shiftKey && key.startsWith('Arrow') ? `Shift+${key}` : key)
  if (!act) return
  event.preventDefault()
  act()
}
