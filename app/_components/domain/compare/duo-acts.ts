import { speeds } from '../clip/frames'
import type { KeyActs } from './duo-keys'
import { type CompareOptions, limits } from './options'
import type { CommonMark } from './timing'
import type { DuoControl } from './use-duo'

interface Acting {
  readonly duo: DuoControl
  readonly options: CompareOptions
  readonly choose: (changes: Partial<CompareOptions>) => void
  readonly common: readonly CommonMark[]
  /** Milliseconds of one frame of the second film. */
  readonly frame: number
}

/** What each key does to two films. */
export function duoActs({ duo, options, choose, common, frame }: Acting): KeyActs {
  const add = (key: keyof typeof limits, by: number) => () => {
    const [least, most] = limits[key]
    choose({ [key]: Math.min(most, Math.max(least, options[key] + by)) })
  }
  const slower = (by: 1 | -1) => () => {
    const next = speeds[speeds.indexOf(duo.speed) + by]
    if (next !== undefined) duo.setSpeed(next)
  }
  const toMark = (by: 1 | -1) => () => {
    const beyond = common.filter(({ first }) => by * (first - duo.time) > 0.002)
    const next = by === 1 ? beyond[0] : beyond.at(-1)
    if (next) duo.goTo(next.first)
  }
  const over = options.view === 'over'
  const placing: [string, () => void][] = [
    ['Shift+ArrowLeft', add('x', -5)],
    ['Shift+ArrowRight', add('x', 5)],
    ['Shift+ArrowUp', add('y', -5)],
    ['Shift+ArrowDown', add('y', 5)],
    ['+', add('size', 1)],
    ['=', add('size', 1)],
    ['-', add('size', -1)],
    ['[', add('strength', -5)],
    [']', add('strength', 5)],
  ]
  return new Map<string, (held: boolean) => void>([
    [' ', duo.toggle],
    ['ArrowLeft', (held) => duo.step(-1, held)],
    ['ArrowRight', (held) => duo.step(1, held)],
    ['ArrowDown', slower(1)],
    ['ArrowUp', slower(-1)],
    ['Home', () => duo.goTo(duo.whole.start)],
    ['PageUp', toMark(-1)],
    ['PageDown', toMark(1)],
    [',', add('shift', -frame)],
    ['.', add('shift', frame)],
    ['o', () => choose({ view: over ? 'beside' : 'over' })],
    ['m', () => choose({ mirrored: !options.mirrored })],
    ['p', () => choose({ points: !options.points })],
    ['0', () => choose({ x: 0, y: 0, size: 100, shift: 0 })],
    ...(over ? placing : []),
  ])
}
