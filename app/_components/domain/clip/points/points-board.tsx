'use client'

import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react'
import type { Point } from '@/lib/assessment/measure/picture'
import type { Slot } from '@/lib/assessment/measure/taken'
import { slotName } from '@/lib/assessment/measure/wording-taken'
import type { Measuring } from '../measure/use-measuring'
import type { ClipControl, FilmSize } from '../use-clip'
import { filmScale, toFilm } from './film-place'
import { Loupe } from './loupe'

interface BoardProps {
  readonly clip: ClipControl
  readonly size: FilmSize
  readonly measuring: Measuring
}

/** A point is taken up again from within so many screen pixels. */
const reach = 16

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}

/** The picture as a thing to place points on: with a mouse, a finger, or the arrow keys. */
export function PointsBoard({ clip, size, measuring }: BoardProps) {
  const board = useRef<HTMLButtonElement>(null)
  const held = useRef<{ slot: Slot; off: Point; isNew: boolean } | null>(null)
  const [near, setNear] = useState<{ at: Point; scale: number } | null>(null)
  const { draft, visible } = measuring
  const { chosen } = draft

  const placeOf = (event: PointerEvent) => {
    const box = event.currentTarget.getBoundingClientRect()
    return { at: toFilm({ x: event.clientX, y: event.clientY }, box, size), scale: filmScale(box, size) }
  }
  const look = (at: Point | null) => {
    const box = board.current?.getBoundingClientRect()
    setNear(at && box ? { at, scale: filmScale(box, size) } : null)
  }

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return
    const { at, scale } = placeOf(event)
    const found = visible
      .flatMap((slot) => (draft.points[slot] ? [{ slot, at: draft.points[slot] }] : []))
      .map((one) => ({ ...one, far: Math.hypot(one.at.x - at.x, one.at.y - at.y) * scale }))
      .filter(({ far }) => far <= reach)
      .sort((a, b) => a.far - b.far)[0]
    // The chosen point, when it is not there yet, goes where it is put, close to another one or not.
    const takesUp = found && (chosen === null || draft.points[chosen] !== undefined)
    const slot = takesUp ? found.slot : chosen
    if (!slot) return
    event.currentTarget.setPointerCapture(event.pointerId)
    const off = takesUp ? { x: found.at.x - at.x, y: found.at.y - at.y } : { x: 0, y: 0 }
    const isNew = draft.points[slot] === undefined
    const to = { x: at.x + off.x, y: at.y + off.y }
    if (!measuring.place(slot, to, true)) return
    held.current = { slot, off, isNew }
    look(to)
  }
  const onPointerMove = (event: PointerEvent<HTMLButtonElement>) => {
    if (!held.current) return
    const { slot, off } = held.current
    const { at } = placeOf(event)
    const to = { x: at.x + off.x, y: at.y + off.y }
    measuring.place(slot, to, false)
    look(to)
  }
  const onPointerUp = () => {
    if (held.current?.isNew) measuring.goOn(held.current.slot)
    held.current = null
    look(null)
  }

  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>) => {
    const by = arrows[event.key]
    const isEnter = event.key === 'Enter'
    if (!chosen || (!by && !isEnter)) return
    event.preventDefault()
    // Held down it would place every point.
    if (isEnter && event.repeat) return
    // On another frame it begins anew: a small move never takes a point along.
    const at = visible.includes(chosen) ? draft.points[chosen] : undefined
    if (isEnter && at) {
      measuring.goOn(chosen)
      look(null)
      return
    }
    const step = event.shiftKey ? 10 : 1
    const from = at ?? measuring.startFor(size)
    const to = at && by ? { x: from.x + by.x * step, y: from.y + by.y * step } : from
    if (measuring.place(chosen, to, true)) look(to)
  }

  const side = near && near.at.x < size.width / 2 ? 'right' : 'left'
  const what = chosen ? `Place the ${slotName[chosen]}` : 'All points are placed'
  return (
    <>
      <button
        ref={board}
        type="button"
        className="points-board"
        aria-label={`${what}. Arrows move it by a pixel, with shift by ten; Enter goes to the next point.`}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerUp}
        onKeyDown={onKeyDown}
        onBlur={() => look(null)}
      />
      {near ? <Loupe video={clip.video} at={near.at} scale={near.scale} side={side} /> : null}
    </>
  )
}
