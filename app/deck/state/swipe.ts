/** Where a finger was, in CSS pixels. */
export interface Touch {
  readonly x: number
  readonly y: number
}

/** Shortest way, how much flatter than tall it must be, and the rim that belongs to the phone's own gesture. */
const shape = { least: 56, flatness: 2, rim: 24 } as const

/** The step of a swipe across a page of that width: 1 to what follows (leftwards), -1 to what came before, 0 = it was none. */
export function swipeStep(from: Touch, to: Touch, width: number): 1 | 0 | -1 {
  const [across, along] = [to.x - from.x, to.y - from.y]
  if (from.x < shape.rim || from.x > width - shape.rim) return 0
  if (Math.abs(across) < shape.least || Math.abs(across) < shape.flatness * Math.abs(along)) return 0
  return across < 0 ? 1 : -1
}
