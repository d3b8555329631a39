import type { Point } from '@/lib/assessment/measure/picture'
import type { FilmSize } from '../use-clip'

/** A box on the screen, as the browser gives it. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** Screen pixels to one of the film, shown whole and centred in a box. */
export const filmScale = (box: Box, size: FilmSize): number =>
  Math.min(box.width / size.width, box.height / size.height)

/** Where a place on the screen lies in the film, in its own pixels; outside the picture where the box shows none. */
export function toFilm(at: Point, box: Box, size: FilmSize): Point {
  const scale = filmScale(box, size)
  const left = box.left + (box.width - size.width * scale) / 2
  const top = box.top + (box.height - size.height * scale) / 2
  return { x: (at.x - left) / scale, y: (at.y - top) / scale }
}
