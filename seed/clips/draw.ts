import type { Told } from './dive'
import { type Camera, type Joint, type Place, seen } from './figure'

/** A film's picture in pixels, and pictures a second. */
export const film = { width: 720, height: 540, rate: 60 } as const

/** How a dive from a board of that height is filmed. */
export const cameraFor = (boardHeight: number, tilt: number): Camera => ({
  pixels: boardHeight > 1 ? 74 : 98,
  origin: { x: 300, y: 470 },
  tilt,
})

/** Frames of a film that lasts so many seconds. */
export const frameCount = (seconds: number): number => Math.floor(seconds * film.rate)

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

const limbs: readonly (readonly [Joint, Joint, number])[] = [
  ['toe', 'ankle', 6],
  ['ankle', 'knee', 8],
  ['knee', 'hip', 10],
  ['hip', 'shoulder', 13],
  ['shoulder', 'hand', 7],
]

/** One frame of a told dive, as an SVG document. */
export function drawFrame(told: Told, boardHeight: number, camera: Camera, time: number): string {
  const point = (place: Place) => {
    const { x, y } = seen(place, camera)
    return `${x.toFixed(1)},${y.toFixed(1)}`
  }
  const line = (places: readonly Place[], colour: string, width: number) =>
    `<polyline points="${places.map(point).join(' ')}" stroke="${colour}" stroke-width="${width}" fill="none" stroke-linecap="round" stroke-linejoin="round"/>`
  const area = (places: readonly Place[], colour: string, opacity: number) =>
    `<polygon points="${places.map(point).join(' ')}" fill="${colour}" fill-opacity="${opacity}"/>`
  const figure = told.figureAt(time)
  const headAt = seen(
    { x: (figure.shoulder.x + 2 * figure.head.x) / 3, y: (figure.shoulder.y + 2 * figure.head.y) / 3 },
    camera,
  )
  const tipY = boardHeight - told.boardAt(time)
  const ticks = Array.from({ length: 11 }, (_, index) => ({ x: -1.6, y: 0.1 + index / 10 }))
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${film.width}" height="${film.height}">`,
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
    ...limbs.map(([from, to, width]) => line([figure[from], figure[to]], ink, width)),
    `<circle cx="${headAt.x.toFixed(1)}" cy="${headAt.y.toFixed(1)}" r="${(camera.pixels * 0.1).toFixed(1)}" fill="${ink}"/>`,
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
