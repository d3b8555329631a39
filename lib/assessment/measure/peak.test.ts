import { describe, expect, it } from 'vitest'
import { seeded } from '@/tests/support/seeded'
import { timeFor } from './flight'
import { measureTaken, peakSd, type Result } from './take'

const films = 20_000
const drop = 3

/** The highest point read in many films whose frames fall anywhere: how far off it is on average, and how often it is covered. */
function readFilms(rate: number, what: Result['what'], truthOf: (speed: number) => number) {
  const { uniform, normal } = seeded(20_266)
  const frame = 1 / rate
  let [sum, covered] = [0, 0]
  for (let film = 0; film < films; film++) {
    const speed = 4 + 1.5 * uniform()
    const phase = uniform() * frame
    const [left, top] = [1, 1 + speed / 9.81]
    const met = left + timeFor(speed, drop)
    /** The first frame that begins at an instant or after it, and the one that begins nearest to it, in milliseconds. */
    const firstFrom = (time: number) => Math.round((Math.ceil((time - phase) / frame) * frame + phase) * 1000)
    const nearest = (time: number) => Math.round((Math.round((time - phase) / frame) * frame + phase) * 1000)
    const marked = (atMs: number) => ({ atMs, frameUs: Math.round(frame * 1_000_000) })
    const taking = measureTaken(
      {
        kind: 'flight',
        leaves: marked(firstFrom(left)),
        meets: marked(firstFrom(met)),
        // By eye, in the frame in which she seems highest.
        top: marked(nearest(top + normal(peakSd))),
        drop: { value: drop, sd: 0.1 },
      },
      3,
    )
    const found = taking.ok ? taking.results.find((one) => one.what === what) : undefined
    if (!found) throw new Error(`${what} was not measured`)
    const truth = truthOf(speed)
    sum += found.value - truth
    if (found.low <= truth && truth <= found.high) covered++
  }
  return { bias: sum / films, covered: covered / films }
}

// Half a frame at 30 a second was −0.16 m/s of speed and 0.20 m of drop.
describe.each([25, 30, 60, 240])('by the highest point, at %d frames a second', (rate) => {
  it.each([
    ['takeOffSpeedByPeak', (speed: number) => speed],
    ['dropByPeak', () => drop],
  ] as const)('%s is right on average, and covered in 93 to 97 of 100 films', (what, truthOf) => {
    const { bias, covered } = readFilms(rate, what, truthOf)
    expect(Math.abs(bias)).toBeLessThan(0.015)
    expect(covered).toBeGreaterThan(0.93)
    expect(covered).toBeLessThan(0.97)
  })
})
