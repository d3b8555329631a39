import { v7 } from 'uuid'

/** A stream of chance that is the same on each machine: all that is random in the demo comes from one of these. */
export interface Chance {
  /** Uniform in [0, 1). */
  readonly uniform: () => number
  /** Normal with mean 0. */
  readonly normal: (deviation: number) => number
  readonly happens: (probability: number) => boolean
  /** Throws RangeError for an empty list. */
  readonly pick: <Item>(items: readonly Item[]) => Item
  /** Whole number from `from` to `to`, both inclusive. */
  readonly between: (from: number, to: number) => number
  /** UUID of version 7 for an instant. */
  readonly id: (at: number) => string
}

/** The demo's one fixed seed; another one tells another season. */
const fixedSeed = 'kelder-5'

/** FNV-1a over UTF-16 units: spreads names into 32 bits. */
function spread(name: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < name.length; index++) hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193)
  return hash >>> 0
}

/** mulberry32 (Tommy Ettinger, public domain): 32 bits of state, enough for a story. */
function mulberry32(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/**
 * The stream of that name. Each diver's session has its own, so that a change to one story leaves the others as they were.
 */
export function chanceOf(...name: readonly (string | number)[]): Chance {
  const uniform = mulberry32(spread([fixedSeed, ...name].join(' ')))
  const between = (from: number, to: number) => from + Math.floor(uniform() * (to - from + 1))
  return {
    uniform,
    between,
    happens: (probability) => uniform() < probability,
    // Box–Muller; 1 − u keeps the logarithm finite.
    normal: (deviation) => deviation * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    pick: (items) => {
      const item = items[between(0, items.length - 1)]
      if (item === undefined) throw new RangeError('nothing to pick from')
      return item
    },
    id: (at) => v7({ msecs: at, random: Uint8Array.from({ length: 16 }, () => between(0, 255)) }),
  }
}
