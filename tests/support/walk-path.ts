/** A point of a drawing, y downwards. */
export interface Point {
  readonly x: number
  readonly y: number
}

/** Points along SVG path data of `M`, `H` and `C` in absolute coordinates, 24 to a piece. */
export function walkPath(path: string): Point[] {
  const points: Point[] = []
  let at: Point = { x: 0, y: 0 }
  for (const [, letter = '', rest = ''] of path.matchAll(/([MHC])([^MHC]*)/g)) {
    const n = rest.trim().split(/\s+/).map(Number)
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n
    const from = at
    const end = letter === 'H' ? { x: a, y: from.y } : letter === 'M' ? { x: a, y: b } : { x: e, y: f }
    if (letter === 'M') points.push(end)
    else
      for (let step = 1; step <= 24; step += 1) {
        const t = step / 24
        const mix = (p: number, q: number, r: number, s: number) =>
          (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t ** 2 * r + t ** 3 * s
        points.push(
          letter === 'H'
            ? { x: from.x + (end.x - from.x) * t, y: from.y }
            : { x: mix(from.x, a, c, e), y: mix(from.y, b, d, f) },
        )
      }
    at = end
  }
  return points
}
