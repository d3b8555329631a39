import type { ArcSubject } from '@/lib/assessment/arc-subject'
import { type Course, divingDepth, heightAt, type Place, plotCourse } from './course'

/** How large a drawing is, in its own units (px at its natural size). */
export interface ArcSize {
  readonly width: number
  /** Units for a metre of height, before a high board is fitted into `sky`. */
  readonly metre: number
  /** Most height that the part over the water may take. */
  readonly sky: number
  /** From one rating to the next on the rule. */
  readonly step: number
  /** Half the width of a notch. */
  readonly notch: number
  /** The body's lines at take-off and entry, the twist: only where there is room. */
  readonly detailed: boolean
}

export const arcSizes = {
  line: { width: 96, metre: 4.5, sky: 19, step: 5, notch: 3.5, detailed: false },
  narrow: { width: 360, metre: 20, sky: 96, step: 16, notch: 11, detailed: true },
  wide: { width: 960, metre: 34, sky: 160, step: 19, notch: 16, detailed: true },
} as const satisfies Record<string, ArcSize>
export type ArcSizeName = keyof typeof arcSizes

export interface Point {
  readonly x: number
  readonly y: number
}

/** A vertical that the body is held against: where the head is on it, and which way the feet point while they stand. */
export interface BodyLine {
  readonly x: number
  readonly top: number
  readonly bottom: number
  readonly head: number
  readonly toes: -1 | 0 | 1
}

/** The dive over the water, in drawing units, y downwards. */
export interface ArcScene {
  /** SVG path data of the course: on the board, through the air, under water. */
  readonly path: string
  /** Two strands around the flight while the body twists. */
  readonly twist: readonly string[]
  /** Sign of the turn, an open circle with the heads of an arrow; null when the body does not turn over. */
  readonly turn: string | null
  readonly board: { readonly from: Point; readonly tip: Point; readonly firm: boolean }
  readonly water: { readonly top: number; readonly bottom: number }
  readonly stack: BodyLine
  readonly line: BodyLine
  /** Where each phase happens; its hairline hangs from here. */
  readonly stations: readonly Point[]
}

export interface ArcDrawing {
  readonly width: number
  readonly height: number
  /** Middle of each column. */
  readonly columns: readonly number[]
  readonly columnWidth: number
  /** Heights of the ratings 0–4 on the rule; 4 is the highest. */
  readonly levels: readonly [number, number, number, number, number]
  /** Null where there is no dive to draw: then only the rule. */
  readonly scene: ArcScene | null
}

/** Metres: a diver with the arms overhead, and where the head is on that line. */
const bodyLength = 1.7
const headHeight = 1.25
/** There is room over a low edge to draw it larger. */
const poolsideZoom = 2
const round = (value: number): number => Math.round(value * 10) / 10

/** The rule alone, for what has no path. */
export const drawRule = (phases: ArcSubject['phases'], size: ArcSize): ArcDrawing =>
  drawArc({ variant: 'drill', facing: 'out', turning: null, enters: 'feet-first', height: 'floor', phases }, size)

/** Lays a dive out over its rule of equal columns. */
export function drawArc(subject: ArcSubject, size: ArcSize): ArcDrawing {
  const names = subject.phases.map((view) => view.phase)
  const columnWidth = size.width / Math.max(1, names.length)
  const course = plotCourse(subject.variant, subject.height, names)
  const scene = course && drawScene(course, subject, size, columnWidth)
  const top = (scene?.water.bottom ?? (size.detailed ? 0 : size.sky + 8)) + size.step
  const level = (rating: number) => round(top + (4 - rating) * size.step)
  return {
    width: size.width,
    height: round(level(0) + Math.max(7, size.step * 0.6)),
    columns: names.map((_, index) => round((index + 0.5) * columnWidth)),
    columnWidth,
    levels: [level(0), level(1), level(2), level(3), level(4)],
    scene,
  }
}

function drawScene(course: Course, subject: ArcSubject, size: ArcSize, columnWidth: number): ArcScene {
  const tallest = size.detailed ? Math.max(course.top, course.over + bodyLength) : course.top
  const firm = subject.height === 'poolside'
  const metre = Math.min(firm && size.detailed ? size.metre * poolsideZoom : size.metre, size.sky / tallest)
  // Small drawings stand in lists: their water lines and rules lie level whatever the board.
  const surface = round(size.detailed ? tallest * metre + 3 : size.sky + 2)
  const spot = ({ c, z }: Place): Point => ({ x: round((c + 0.5) * columnWidth), y: round(surface - z * metre) })
  const draw = (place: Place): string => {
    const { x, y } = spot(place)
    return `${x} ${y}`
  }
  const body = (c: number, from: number, head: number, toes: -1 | 0 | 1): BodyLine => ({
    x: spot({ c, z: from }).x,
    top: spot({ c, z: from + bodyLength }).y,
    bottom: spot({ c, z: from }).y,
    head: spot({ c, z: from + head }).y,
    toes,
  })
  const { leave, entry, over } = course
  const first = course.pieces[0]?.[0] ?? { c: leave, z: over }
  return {
    path: `M${draw(first)}${course.pieces.map(([, ...rest]) => `C${rest.map(draw).join(' ')}`).join('')}`,
    twist: size.detailed ? drawTwist(course, subject, spot) : [],
    turn: size.detailed ? drawTurn(course, subject, spot) : null,
    board: {
      from: spot({ c: Math.min(0, leave) - 0.5, z: over }),
      tip: spot({ c: leave, z: over }),
      firm,
    },
    water: { top: surface, bottom: round(size.detailed ? surface + divingDepth * metre + 8 : surface + 6) },
    stack: body(leave, over, headHeight, subject.facing === 'out' ? 1 : -1),
    line: body(entry, 0, subject.enters === 'head-first' ? bodyLength - headHeight : headHeight, 0),
    stations: subject.phases.map((_, c) => spot({ c, z: heightAt(course, c) })),
  }
}

/** Turns of the drawn twist: a sign, not a count. */
const turns = 2.5

function drawTwist(course: Course, subject: ArcSubject, spot: (place: Place) => Point): readonly string[] {
  const from = subject.phases.findIndex((view) => view.phase === 'twist start')
  const to = subject.phases.findIndex((view) => view.phase === 'twist stop')
  if (from < 0 || to <= from) return []
  const samples = 48
  const strand = (side: 1 | -1): string =>
    Array.from({ length: samples + 1 }, (_, index) => {
      const share = index / samples
      const { x, y } = spot({ c: from + share * (to - from), z: heightAt(course, from + share * (to - from)) })
      const swell = 5 * side * Math.sin(share * turns * 2 * Math.PI)
      return `${index ? 'L' : 'M'}${x} ${round(y + swell)}`
    }).join('')
  return [strand(1), strand(-1)]
}

/** Of the circle of a turn: radius, where it begins and how far it goes, in degrees clockwise from the right. */
const circle = { radius: 9, begins: 150, goes: 285, head: 5 }

/**
 * The way the body turns over, seen with the water to the right: with the clock in forward and back dives, against it,
 * towards the board, in reverse and inward ones. It stands on the course between flight and come-out.
 */
function drawTurn(
  course: Course,
  { facing, turning, phases }: ArcSubject,
  spot: (place: Place) => Point,
): string | null {
  const flight = phases.findIndex(({ phase }) => phase === 'flight' || phase === 'twist stop')
  if (turning === null || flight < 0) return null
  const side = (facing === 'out') === (turning === 'forwards') ? 1 : -1
  const c = flight + 0.5
  const middle = spot({ c, z: heightAt(course, c) })
  const at = (degrees: number, reach: number): string => {
    const angle = (degrees * Math.PI) / 180
    return `${round(middle.x + side * reach * Math.cos(angle))} ${round(middle.y + reach * Math.sin(angle))}`
  }
  const { radius, begins, goes, head } = circle
  const ends = begins + goes
  const lag = (head / radius) * (180 / Math.PI)
  const arc = `M${at(begins, radius)}A${radius} ${radius} 0 1 ${side === 1 ? 1 : 0} ${at(ends, radius)}`
  return `${arc}M${at(ends - lag, radius - head)}L${at(ends, radius)}L${at(ends - lag, radius + head)}`
}
