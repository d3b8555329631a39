'use client'

import { useState } from 'react'
import type { Point } from '@/lib/assessment/measure/picture'
import type { Slot } from '@/lib/assessment/measure/taken'
import { sayDropped, slotName } from '@/lib/assessment/measure/wording-taken'
import {
  chosenFor,
  type Draft,
  droppedIn,
  emptyDraft,
  type Misplaced,
  nextSlot,
  placed,
  remembered,
  toTaken,
  undone,
  visibleSlots,
} from '../points/draft'
import type { ClipControl, FilmSize } from '../use-clip'

const seconds = (ms: number): string => `${(ms / 1000).toFixed(3)} s`

const sayMisplaced = (slot: Slot, why: Misplaced): string =>
  why.kind === 'other frame'
    ? `The other points are on the frame at ${seconds(why.atMs)}: go back to it, or clear them, to place the ${slotName[slot]}.`
    : `Step on from the frame at ${seconds(why.atMs)} before you place the ${slotName[slot]}.`

/** Placing points on the frames of one clip. */
export function useMeasuring(clip: ClipControl) {
  const [draft, setDraft] = useState<Draft>(emptyDraft)
  const [misplaced, setMisplaced] = useState<string | null>(null)
  const [dropped, setDropped] = useState<string | null>(null)
  const [last, setLast] = useState<Slot | null>(null)
  const shownMs = Math.round(clip.shown * 1000)
  const frameUs = clip.frame === null ? null : Math.round(clip.frame * 1_000_000)

  const visible = visibleSlots(draft, shownMs)

  const set = (next: Draft) => {
    setMisplaced(null)
    setDropped(null)
    setDraft(next)
  }
  /** Puts a point on the frame that is shown; a new step back when it begins one. Answers whether it could. */
  const place = (slot: Slot, at: Point, isNew: boolean): boolean => {
    if (!clip.size) return false
    if (!clip.stands()) {
      clip.pause()
      setMisplaced(`The film was still moving: place the ${slotName[slot]} on the frame that stands now.`)
      return false
    }
    const next = placed(isNew ? remembered(draft) : draft, slot, at, { atMs: shownMs, frameUs, ...clip.size })
    if ('atMs' in next) {
      setMisplaced(sayMisplaced(slot, next))
      return false
    }
    const gone = droppedIn(draft, next)
    setMisplaced(null)
    if (isNew) setDropped(gone.length > 0 ? sayDropped(gone) : null)
    setDraft(next)
    setLast(slot)
    return true
  }
  const isHere = (slot: Slot | null): slot is Slot => slot !== null && visible.includes(slot)

  return {
    draft,
    misplaced,
    dropped,
    taken: toTaken(draft, frameUs),
    visible,
    place,
    /** The point on the frame shown that small moves are for: the chosen one, and before that is placed the one placed last. */
    atHand: isHere(draft.chosen) ? draft.chosen : isHere(last) ? last : null,
    nudge: (slot: Slot, to: Point) => {
      if (place(slot, to, true)) setDraft((now) => ({ ...now, chosen: draft.chosen }))
    },
    choose: (slot: Slot) => set({ ...draft, chosen: slot }),
    change: (changes: Parameters<typeof chosenFor>[1]) => set(chosenFor(draft, changes)),
    goOn: (from: Slot) => setDraft((now) => ({ ...now, chosen: nextSlot(now, from) ?? from })),
    undo: () => set(undone(draft)),
    clear: () => set(chosenFor({ ...remembered(draft), points: {}, frames: [null, null], chosen: null }, {})),
    /** Where a point begins that is placed by keys: beside the last one, else in the middle. */
    startFor: (size: FilmSize): Point => {
      const last = Object.values(draft.points).at(-1)
      return last ? { x: last.x, y: last.y - size.height / 20 } : { x: size.width / 2, y: size.height / 2 }
    },
  }
}

export type Measuring = ReturnType<typeof useMeasuring>
