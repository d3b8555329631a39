'use client'

import type { OnFrames } from '@/lib/assessment/measure/taken'
import { askedFor } from '@/lib/assessment/measure/taken'
import { linesOf, pointsOf } from '../points/lines'
import { PointsOverlay } from '../points/points-overlay'
import type { FilmSize } from '../use-clip'
import type { Measuring } from './use-measuring'

/** The points that are being placed, as far as they stand on the frame that is shown. */
export function DraftOverlay({ measuring, size }: { measuring: Measuring; size: FilmSize }) {
  const { draft, visible } = measuring
  if (draft.kind === 'flight') return null
  const points = Object.fromEntries(visible.map((slot) => [slot, draft.points[slot]])) as OnFrames['points']
  return <PointsOverlay size={size} points={pointsOf(points, draft.chosen)} lines={linesOf(draft.kind, points)} />
}

/** A measure that was kept, on the frame that is shown; on another frame only what stands still. */
export function KeptOverlay({ taken, shownMs }: { taken: OnFrames; shownMs: number }) {
  const [frame] = taken.frames
  if (!frame) return null
  const here = askedFor(taken.kind, taken.upright).filter(
    ({ frame: on }) => on === null || taken.frames[on]?.atMs === shownMs,
  )
  const points = Object.fromEntries(here.map(({ slot }) => [slot, taken.points[slot]])) as OnFrames['points']
  return <PointsOverlay size={frame} points={pointsOf(points)} lines={linesOf(taken.kind, points)} hollow />
}
