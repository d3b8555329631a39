/** Pixels of a film's picture. */
export interface Size {
  readonly width: number
  readonly height: number
}

/** A point of a picture in its pixels: x to the right, y down. */
interface Point {
  readonly x: number
  readonly y: number
}

/**
 * How the second picture lies on the first: its point `from` comes to the first's point `to`, `scale` of the first's pixels to
 * one of its own, turned by `turn` degrees clockwise, after being mirrored or not.
 */
export interface Placement {
  readonly from: Point
  readonly to: Point
  readonly scale: number
  readonly turn: number
  readonly mirrored: boolean
}

/** What a coach adds by hand: shares of the first picture's width, and a factor of the size. */
export interface ByHand {
  readonly x: number
  readonly y: number
  readonly size: number
}

/** Where nothing is known of the pictures: middle on middle, equally high. */
export const middleOnMiddle = (first: Size, second: Size, mirrored: boolean): Placement => ({
  from: { x: second.width / 2, y: second.height / 2 },
  to: { x: first.width / 2, y: first.height / 2 },
  scale: first.height / second.height,
  turn: 0,
  mirrored,
})

/** Where a point of the second picture comes to lie in the first, in its pixels. */
export function placeOf({ from, to, scale, turn, mirrored }: Placement, { x, y }: Point): Point {
  const angle = (turn * Math.PI) / 180
  const [right, down] = [(mirrored ? from.x - x : x - from.x) * scale, (y - from.y) * scale]
  return {
    x: to.x + right * Math.cos(angle) - down * Math.sin(angle),
    y: to.y + right * Math.sin(angle) + down * Math.cos(angle),
  }
}

/** A placement moved and sized by hand; what coincided before is what it grows around. */
export const moved = (placement: Placement, hand: ByHand, first: Size): Placement => ({
  ...placement,
  to: { x: placement.to.x + hand.x * first.width, y: placement.to.y + hand.y * first.width },
  scale: placement.scale * hand.size,
})

/** A length as a share of another, as style sheets write it. */
const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(4)}%`

/** How the second picture is laid over the first by a style sheet, whatever size the first is shown at. */
export function styleOf(placement: Placement, first: Size, second: Size) {
  const corner = placeOf(placement, { x: 0, y: 0 })
  const { scale, turn, mirrored } = placement
  return {
    width: percent(second.width, first.width),
    height: percent(second.height, first.height),
    transformOrigin: '0 0',
    transform: `translate(${percent(corner.x, second.width)}, ${percent(corner.y, second.height)}) rotate(${turn.toFixed(3)}deg) scale(${mirrored ? -scale : scale}, ${scale})`,
  }
}
