/** Chance that is the same on each machine and run: mulberry32 (Tommy Ettinger, public domain) and Box and Muller's normal. */
export function seeded(seed: number): { readonly uniform: () => number; readonly normal: (sd: number) => number } {
  let state = seed
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const normal = (sd: number) => sd * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  return { uniform, normal }
}
