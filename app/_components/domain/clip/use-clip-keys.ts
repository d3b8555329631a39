'use client'

import type { KeyboardEvent } from 'react'
import { speeds } from './frames'
import { pressesOnce } from './presses-once'
import type { ClipControl } from './use-clip'

function slower(clip: ClipControl, by: 1 | -1): void {
  const next = speeds[speeds.indexOf(clip.speed) + by]
  if (next !== undefined) clip.setSpeed(next)
}

type Act = (clip: ClipControl) => void

const acts: ReadonlyMap<string, Act> = new Map<string, Act>([
  [' ', (clip) => clip.toggle()],
  ['ArrowLeft', (clip) => clip.step(-1)],
  ['ArrowRight', (clip) => clip.step(1)],
  ['ArrowDown', (clip) => slower(clip, 1)],
  ['ArrowUp', (clip) => slower(clip, -1)],
  ['Home', (clip) => clip.toStart()],
])
/** What a key does again while it is held down. */
const heldActs: ReadonlyMap<string, Act> = new Map<string, Act>([
  ['ArrowLeft', (clip) => clip.step(-1, true)],
  ['ArrowRight', (clip) => clip.step(1, true)],
])

const typesItself = (target: EventTarget): boolean =>
  target instanceof HTMLSelectElement || target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement

/**
 * What keys do while the focus is in the clip: those of the player, and `more` before them. A field keeps its own keys, and
 * a button its space. Held down, a key acts once, but for the steps.
 */
export function useClipKeys(clip: ClipControl, more: ReadonlyMap<string, () => void> = new Map()) {
  return (event: KeyboardEvent) => {
    const { target, repeat } = event
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key
    const modified = event.altKey || event.ctrlKey || event.metaKey
    if (event.defaultPrevented || modified || typesItself(target)) return
    const isPress =
      target instanceof HTMLButtonElement || (target instanceof HTMLElement && target.tagName === 'SUMMARY')
    if (pressesOnce(event)) event.preventDefault()
    if (key === ' ' && isPress) return
    const own = more.get(key)
    const act = acts.get(key)
    if (!own && !act) return
    event.preventDefault()
    if (repeat) heldActs.get(key)?.(clip)
    else if (own) own()
    else act?.(clip)
  }
}
