import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correct } from './pace'

const frame = 1 / 60
const tick = 1 / 60

/** Plays a film beside a clock for so many seconds, and gives its drift in the end and how often it jumped. */
function play(from: number, pace: number, seconds: number) {
  let [at, target, jumps, now] = [from, 0, 0, 0]
  while (now < seconds) {
    const act = correct({ at, target, pace }, frame, 0)
    if (act.kind === 'seek') {
      at = act.to
      jumps += 1
    } else {
      expect(act.pace).toBeGreaterThan(0)
      at += act.pace * tick
    }
    target += pace * tick
    now += tick
  }
  return { drift: Math.abs(at - target), jumps }
}

describe('a film beside another', () => {
  it('is within a frame after a second, at any speed, and jumps only from afar', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.constantFrom(1, 1 / 2, 1 / 4, 1 / 8),
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (from, speed, slope) => {
          const { drift, jumps } = play(from, speed * slope, 1 / speed)
          expect(drift).toBeLessThan(frame)
          expect(jumps).toBeLessThanOrEqual(Math.abs(from) < 0.1 ? 0 : 2)
        },
      ),
      { seed: 26, numRuns: 500 },
    )
  })

  it('leaves what is nearly right alone', () => {
    expect(correct({ at: 1.003, target: 1, pace: 0.5 }, frame, 0.05)).toEqual({ kind: 'pace', pace: 0.5 })
  })

  it('jumps ahead of where it should be, by what the jump will last', () => {
    expect(correct({ at: 0, target: 1, pace: 0.5 }, frame, 0.1)).toEqual({ kind: 'seek', to: 1.05 })
  })

  it('asks no player for a pace that it has not', () => {
    expect(correct({ at: 1, target: 1, pace: 0.01 }, frame, 0)).toEqual({ kind: 'pace', pace: 1 / 16 })
    expect(correct({ at: 1.1, target: 1, pace: 0.01 }, frame, 0)).toEqual({ kind: 'seek', to: 1 })
    expect(correct({ at: 1, target: 1, pace: 99 }, frame, 0)).toEqual({ kind: 'pace', pace: 16 })
  })
})
