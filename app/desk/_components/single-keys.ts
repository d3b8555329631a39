'use client'

import { useEffect, useState } from 'react'

/** Whether what is pressed there is text, or belongs to a control of its own. */
export const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, dialog') !== null

/** Whether a key comes with another one, which makes it the browser's. */
export const combined = ({ ctrlKey, metaKey, altKey }: KeyboardEvent): boolean => ctrlKey || metaKey || altKey

/** Opens a panel and puts the focus on the first thing that it asks; presses a button, follows a link. */
export function pressControl(control: HTMLElement): void {
  const panel = control.tagName === 'SUMMARY' ? control.closest('details') : null
  if (panel) panel.open = true
  else control.click()
  panel?.querySelector<HTMLElement>('input:not([type=hidden]), textarea, button')?.focus()
}

/** The control below `within` that a key works. */
export const controlOf = (within: ParentNode | null | undefined, key: string): HTMLElement | null =>
  within?.querySelector<HTMLElement>(`[data-shortcut="${CSS.escape(key)}"]`) ?? null

const kept = 'plumbline.list-keys'
const stored = (): boolean => {
  try {
    return localStorage.getItem(kept) !== 'off'
  } catch {
    return true
  }
}

/** Whether single keys work, as this browser was told last; they listen once the page has come alive. */
export function useKeysOn(): readonly [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(false)
  useEffect(() => setOn(stored()), [])
  const turn = (next: boolean) => {
    setOn(next)
    try {
      localStorage.setItem(kept, next ? 'on' : 'off')
    } catch {
      // Where nothing can be stored, it holds for this page.
    }
  }
  return [on, turn]
}
