import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correct } from './pace'

const frame = 1 / 60
const sharp = 1 / 60

/** Plays a film beside a clock for so many seconds, looked at once a `turn`, and gives its drift at each look and how often it jumped. */
function play(from: number, pace: number, seconds: number, turn = sharp) {
  let [at, target, jumps] = [from, 0, 0]
  const drifts = [from]
  for (let now = 0; now < seconds; now += turn) {
    const act = correct({ at, target, pace }, { frame, jump: 0, turn })
    if (act.kind === 'seek') {
      at = act.to
      jumps += 1
    } else {
      at += act.pace * turn
    }
    target += pace * turn
    drifts.push(at - target)
  }
  return { drifts, drift: Math.abs(drifts.at(-1) ?? 0), jumps }
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

  it('does not swing past its place however seldom the page gets its turn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.constantFrom(1, 1 / 2, 1 / 4, 1 / 8),
        fc.double({ min: sharp, max: 1, noNaN: true }),
        (from, pace, turn) => {
          const { drifts, drift } = play(from, pace, 2 / pace + 20 * turn, turn)
          const grown = drifts.slice(1).map((next, index) => Math.abs(next) - Math.abs(drifts[index] ?? 0))
          expect(Math.max(...grown)).toBeLessThan(1e-9)
          expect(drifts.every((one) => one * from >= 0)).toBe(true)
          expect(drift).toBeLessThan(frame)
        },
      ),
      { seed: 27, numRuns: 300 },
    )
  })

  it('leaves what is nearly right alone', () => {
    expect(correct({ at: 1.003, target: 1, pace: 0.5 }, { frame, jump: 0.05, turn: sharp })).toEqual({
      kind: 'pace',
      pace: 0.5,
    })
  })

  it('jumps ahead of where it should be, by what the jump will last', () => {
    expect(correct({ at: 0, target: 1, pace: 0.5 }, { frame, jump: 0.1, turn: sharp })).toEqual({
      kind: 'seek',
      to: 1.05,
    })
  })

  it('asks no player for a pace that it has not', () => {
    expect(correct({ at: 1, target: 1, pace: 0.01 }, { frame, jump: 0, turn: sharp })).toEqual({
      kind: 'pace',
      pace: 1 / 16,
    })
    expect(correct({ at: 1.1, target: 1, pace: 0.01 }, { frame, jump: 0, turn: sharp })).toEqual({
      kind: 'seek',
      to: 1,
    })
    expect(correct({ at: 1, target: 1, pace: 99 }, { frame, jump: 0, turn: sharp })).toEqual({ kind: 'pace', pace: 16 })
  })
})
