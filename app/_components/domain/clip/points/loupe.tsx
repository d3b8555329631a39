'use client'

import { type RefObject, useEffect, useRef } from 'react'
import type { Point } from '@/lib/assessment/measure/picture'

interface LoupeProps {
  readonly video: RefObject<HTMLVideoElement | null>
  readonly at: Point
  /** Screen pixels to one of the film. */
  readonly scale: number
  /** Away from the finger. */
  readonly side: 'left' | 'right'
}

const [edge, closer] = [224, 4]

/** The picture around a point, four times as close, beside the finger that hides it. */
export function Loupe({ video, at, scale, side }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const [film, pen] = [video.current, canvas.current?.getContext('2d')]
    if (!film || !pen) return
    // The canvas has two pixels to one of the screen.
    const across = edge / (2 * closer * scale)
    pen.imageSmoothingEnabled = false
    pen.clearRect(0, 0, edge, edge)
    pen.drawImage(film, at.x - across / 2, at.y - across / 2, across, across, 0, 0, edge, edge)
    for (const [colour, width] of [
      ['#ffffff', 6],
      ['#962c17', 2],
    ] as const) {
      pen.strokeStyle = colour
      pen.lineWidth = width
      pen.beginPath()
      pen.moveTo(edge / 2, edge * 0.2)
      pen.lineTo(edge / 2, edge * 0.8)
      pen.moveTo(edge * 0.2, edge / 2)
      pen.lineTo(edge * 0.8, edge / 2)
      pen.stroke()
    }
  }, [video, at.x, at.y, scale])
  return <canvas ref={canvas} width={edge} height={edge} className={`loupe loupe-${side}`} />
}
