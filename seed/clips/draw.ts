import type { Point } from '@/lib/assessment/measure/picture'
import type { Told } from './dive'
import { type Camera, type Joint, type Place, seen } from './figure'

/** How a dive from a board of that height is filmed: pixels to a metre, and the picture, both grown for the higher board. */
interface Framing {
  readonly width: number
  readonly height: number
  readonly pixels: number
}
const framings = {
  low: { width: 720, height: 540, pixels: 98 },
  high: { width: 960, height: 720, pixels: 99 },
} as const

/** The picture of a film from the low board, and how many a second a film usually has. */
export const film = { width: framings.low.width, height: framings.low.height, rate: 60 } as const

/** The picture of a film from a board of that height. */
export const framingOf = (boardHeight: number): Framing => (boardHeight > 1 ? framings.high : framings.low)

/** The camera that films a dive from a board of that height, held askew by so many degrees. */
export function cameraFor(boardHeight: number, tilt: number): Camera {
  const { width, height, pixels } = framingOf(boardHeight)
  return { pixels, origin: { x: (width * 5) / 12, y: height - 70 - (boardHeight > 1 ? 20 : 0) }, tilt }
}

/** Frames of a film that lasts so many seconds. */
export const frameCount = (seconds: number, rate: number): number => Math.floor(seconds * rate)

/** What stands in the picture to measure by: a staff of one metre, and a cord that hangs straight. In metres. */
export const staff: readonly [Place, Place] = [
  { x: -1.6, y: 0.1 },
  { x: -1.6, y: 1.1 },
]
export const cord = (boardHeight: number): readonly [bottom: Place, top: Place] => [
  { x: -2.2, y: 0.2 },
  { x: -2.2, y: boardHeight + 1.2 },
]

// The light theme of the pages: ink on paper, water below.
const ink = '#16242c'
const soft = '#43535b'
const edge = '#6f8087'
const paper = '#fbfbf8'
const water = '#a9c8cc'
// The suit ends at hip and shoulder, and a lighter spot at ankle, hip, shoulder and hand says where a point belongs.
const suit = '#07525b'
const spots = ['ankle', 'hip', 'shoulder', 'hand'] as const satisfies readonly Joint[]

/** Limbs with how thick they are at either end, in metres; the trunk is drawn last, over the rest. */
const limbs: readonly (readonly [from: Joint, to: Joint, thick: number, thin: number, colour: string])[] = [
  ['ankle', 'toe', 0.075, 0.04, ink],
  ['knee', 'ankle', 0.115, 0.075, ink],
  ['hip', 'knee', 0.165, 0.115, ink],
  ['shoulder', 'hand', 0.085, 0.055, ink],
  ['hip', 'shoulder', 0.185, 0.2, suit],
]

/** The outline of a limb that narrows from one end to the other, with round ends. */
function limbPath(from: Point, to: Point, thick: number, thin: number): string {
  const along = Math.atan2(to.y - from.y, to.x - from.x)
  const side = (at: Point, wide: number, turn: number) =>
    `${(at.x + (wide / 2) * Math.cos(along + turn)).toFixed(1)},${(at.y + (wide / 2) * Math.sin(along + turn)).toFixed(1)}`
  const [left, right] = [-Math.PI / 2, Math.PI / 2]
  const [r, s] = [(thick / 2).toFixed(1), (thin / 2).toFixed(1)]
  return `M${side(from, thick, left)} L${side(to, thin, left)} A${s},${s} 0 0 1 ${side(to, thin, right)} L${side(from, thick, right)} A${r},${r} 0 0 1 ${side(from, thick, left)} Z`
}

/** Drops that are thrown up where the water was met, the more the less upright the line was. In metres above the water. */
function splash(told: Told, time: number): Place[] {
  const after = time - told.entry
  if (after <= 0) return []
  const met = told.figureAt(told.entry).hand.x
  const slant = Math.abs(((told.poseAt(told.entry).trunk + 90) % 180) - 90)
  const strength = Math.min(2.6, 1.2 + slant / 8)
  return [-4, -3, -2, -1, 1, 2, 3, 4].map((drop) => {
    const up = strength * (1.1 - 0.18 * Math.abs(drop))
    return { x: met + 0.05 * drop + 0.22 * drop * strength * 0.5 * after, y: up * after - 4.905 * after ** 2 }
  })
}

/** One frame of a told dive, as an SVG document. */
export function drawFrame(told: Told, boardHeight: number, camera: Camera, time: number): string {
  const { width, height } = framingOf(boardHeight)
  const point = (place: Place) => {
    const { x, y } = seen(place, camera)
    return `${x.toFixed(1)},${y.toFixed(1)}`
  }
  const line = (places: readonly Place[], colour: string, wide: number) =>
    `<polyline points="${places.map(point).join(' ')}" stroke="${colour}" stroke-width="${wide}" fill="none" stroke-linecap="round" stroke-linejoin="round"/>`
  const area = (places: readonly Place[], colour: string, opacity: number) =>
    `<polygon points="${places.map(point).join(' ')}" fill="${colour}" fill-opacity="${opacity}"/>`
  const round = ({ x, y }: Point, radius: number, colour: string) =>
    `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${(camera.pixels * radius).toFixed(1)}" fill="${colour}"/>`
  const figure = told.figureAt(time)
  const headAt = seen(
    { x: (figure.shoulder.x + 2 * figure.head.x) / 3, y: (figure.shoulder.y + 2 * figure.head.y) / 3 },
    camera,
  )
  const tipY = boardHeight - told.boardAt(time)
  const ticks = Array.from({ length: 11 }, (_, index) => ({ x: -1.6, y: 0.1 + index / 10 }))
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">`,
    `<rect width="100%" height="100%" fill="${paper}"/>`,
    line(cord(boardHeight), edge, 1),
    line(staff, soft, 3),
    ...ticks.map(({ x, y }) =>
      line(
        [
          { x: x - 0.05, y },
          { x, y },
        ],
        soft,
        1.5,
      ),
    ),
    line(
      [
        { x: -3.4, y: boardHeight },
        { x: -1.4, y: boardHeight },
        { x: -0.6, y: (boardHeight + tipY) / 2 + (boardHeight - tipY) * 0.2 },
        { x: 0, y: tipY },
      ],
      ink,
      5,
    ),
    line(
      [
        { x: -1.4, y: boardHeight - 0.08 },
        { x: -1.4, y: -0.1 },
      ],
      edge,
      4,
    ),
    round(headAt, 0.1, ink),
    ...limbs.map(
      ([from, to, thick, thin, colour]) =>
        `<path d="${limbPath(seen(figure[from], camera), seen(figure[to], camera), thick * camera.pixels, thin * camera.pixels)}" fill="${colour}"/>`,
    ),
    ...spots.map((spot) => round(seen(figure[spot], camera), 0.018, paper)),
    ...splash(told, time).flatMap((drop) => (drop.y > 0 ? [round(seen(drop, camera), 0.03, edge)] : [])),
    area(
      [
        { x: -9, y: 0 },
        { x: 9, y: 0 },
        { x: 9, y: -9 },
        { x: -9, y: -9 },
      ],
      water,
      0.75,
    ),
    line(
      [
        { x: -9, y: 0 },
        { x: 9, y: 0 },
      ],
      edge,
      1.5,
    ),
    '</svg>',
  ].join('\n')
}
