'use client'

import { useEffect, useRef } from 'react'
import { CheckField } from '@/app/_components/ui/check-field'
import { combined, controlOf, pressControl, typing, useKeysOn } from '@/app/desk/_components/single-keys'

const allRows = (): HTMLElement[] => [...document.querySelectorAll<HTMLElement>('[data-row]')]
const rowOf = (element: Element | null): HTMLElement | null => element?.closest<HTMLElement>('[data-row]') ?? null

function goTo(row: HTMLElement | undefined): void {
  row?.focus()
  row?.scrollIntoView({ block: 'nearest' })
}

/** Closes the panel that holds the focus and goes back to its line. */
function leave(): boolean {
  const panel = document.activeElement?.closest<HTMLDetailsElement>('details[open]')
  const row = rowOf(panel ?? null)
  if (!panel || !row) return false
  panel.open = false
  goTo(row)
  return true
}

function onKey(event: KeyboardEvent): boolean {
  if (combined(event)) return false
  if (event.key === 'Escape') return leave()
  if (typing(event.target)) return false
  const row = rowOf(document.activeElement)
  const by = { j: 1, ArrowDown: 1, k: -1, ArrowUp: -1 }[event.key]
  if (by !== undefined) {
    const rows = allRows()
    const at = row ? rows.indexOf(row) + by : by > 0 ? 0 : rows.length - 1
    goTo(rows[Math.min(Math.max(at, 0), rows.length - 1)])
    return rows.length > 0
  }
  const control = controlOf(row, event.key)
  if (control) pressControl(control)
  return control !== null
}

/**
 * Works the lists through with the keyboard: j and k or the arrows move, a key does. It can be turned off, for whoever
 * speaks to the browser. When a line has gone, the focus goes to the one that took its place.
 */
export function ListKeys({ rows }: { rows: readonly string[] }) {
  const [on, turn] = useKeysOn()
  const last = useRef<number | null>(null)
  useEffect(() => {
    if (!on) return
    const listen = (event: KeyboardEvent) => {
      if (onKey(event)) event.preventDefault()
      const row = rowOf(document.activeElement)
      if (row) last.current = allRows().indexOf(row)
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [on])
  const shown = rows.join(' ')
  useEffect(() => {
    if (last.current === null || shown === '' || rowOf(document.activeElement)) return
    const now = allRows()
    goTo(now[Math.min(last.current, now.length - 1)])
  }, [shown])
  return (
    <div className="list-keys no-print">
      <CheckField label="Work with keys" checked={on} onChange={(event) => turn(event.target.checked)} />
      <span>
        <kbd>j</kbd> <kbd>k</kbd> or <kbd>↓</kbd> <kbd>↑</kbd> move · <kbd>o</kbd> open · the key beside a button opens
        it · <kbd>Enter</kbd> sends · <kbd>Esc</kbd> back to the line
      </span>
    </div>
  )
}
