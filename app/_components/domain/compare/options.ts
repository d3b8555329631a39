/** How two films are compared: what the address holds, so that it can be sent and opened again. */
export interface CompareOptions {
  /** The instant that both are laid on: a mark that both have, or null for the beginning of both moments. */
  readonly at: string | null
  /** One clock for both; or the second runs so that its flight, or each phase, takes as long as the first's. */
  readonly pace: Pace
  readonly view: 'beside' | 'over'
  readonly mirrored: boolean
  /** What coincides when one lies over the other; `middle` is the picture's. */
  readonly place: Place
  readonly points: boolean
  /** How much of the second film shows when it lies over the first: 0 to 100. */
  readonly strength: number
  /** Milliseconds that the second film was moved on by hand. */
  readonly shift: number
  /** Thousandths of the first picture's width that the second was moved by hand, and its size in hundredths. */
  readonly x: number
  readonly y: number
  readonly size: number
}

const paces = ['clock', 'flight', 'phases'] as const
export type Pace = (typeof paces)[number]
const places = ['tip', 'hip', 'middle'] as const
export type Place = (typeof places)[number]

/** What holds where an address says nothing. */
export const plainly: CompareOptions = {
  at: null,
  pace: 'clock',
  view: 'beside',
  mirrored: false,
  place: 'tip',
  points: true,
  strength: 50,
  shift: 0,
  x: 0,
  y: 0,
  size: 100,
}

/** How far each number may go, from and to. */
export const limits = {
  strength: [0, 100],
  shift: [-5_000, 5_000],
  x: [-1_000, 1_000],
  y: [-1_000, 1_000],
  size: [25, 400],
} as const satisfies Partial<Record<keyof CompareOptions, readonly [number, number]>>

type Asked = Readonly<Record<string, string | readonly string[] | undefined>>

const oneOf = <Value extends string>(known: readonly Value[], text: unknown, other: Value): Value =>
  known.find((value) => value === text) ?? other

function numberOf(key: keyof typeof limits, text: unknown): number {
  const value = typeof text === 'string' && /^-?\d{1,5}$/.test(text) ? Number(text) : plainly[key]
  const [least, most] = limits[key]
  return Math.min(most, Math.max(least, value))
}

/** Reads what an address holds. What it cannot mean is taken as if it were not there. */
export const readOptions = (asked: Asked): CompareOptions => ({
  at: typeof asked.at === 'string' && asked.at !== '' ? asked.at : plainly.at,
  pace: oneOf(paces, asked.pace, plainly.pace),
  view: oneOf(['beside', 'over'], asked.view, plainly.view),
  mirrored: asked.mirrored === 'yes',
  place: oneOf(places, asked.place, plainly.place),
  points: asked.points !== 'no',
  strength: numberOf('strength', asked.strength),
  shift: numberOf('shift', asked.shift),
  x: numberOf('x', asked.x),
  y: numberOf('y', asked.y),
  size: numberOf('size', asked.size),
})

/** Writes the options that differ from the plain ones as part of an address. */
export function writeOptions(options: CompareOptions): string {
  const said = (value: string | number | boolean | null) =>
    typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value)
  const keys = Object.keys(plainly) as (keyof CompareOptions)[]
  const written = keys.filter((key) => options[key] !== plainly[key]).map((key) => [key, said(options[key])])
  return new URLSearchParams(written).toString()
}
