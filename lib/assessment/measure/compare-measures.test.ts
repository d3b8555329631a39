import { describe, expect, it } from 'vitest'
import { compareMeasures, type InPhase } from './compare-measures'
import { measuredAs } from './measured'
import type { Result, ResultName } from './take'
import type { OnFrames } from './taken'
import { nameCompared, sayCompared, sayResult } from './wording-compared'

const result = (what: ResultName, value: number, sd: number): Result => ({
  what,
  ...measuredAs(value, sd),
  plausible: null,
  check: false,
})
const still = { frames: [], points: {}, upright: 'picture', down: false, metres: null, pixel: 2 } as const
const arms = (phase: string | null, value: number, sd = 1, down = false): InPhase => {
  const taken: OnFrames = { ...still, kind: 'arms', down }
  return { taken, results: [result('armAngle', value, sd), result('clockHour', 12, 1)], phase }
}

describe('measures of two films', () => {
  it('are compared kind by kind and phase by phase, of several the last', () => {
    const first = [arms('press', 40), arms('press', 30), arms('entry', 5, 1, true), arms('flight', 90)]
    const second = [arms('press', 10), arms('entry', 4, 1, true), arms('entry', 5)]
    const found = compareMeasures(first, second)
    expect(found.map(({ phase, first: one, second: other }) => [phase, one.value, other.value])).toEqual([
      ['press', 30, 10],
      ['entry', 5, 4],
    ])
    expect(found.map(({ difference }) => difference.told)).toEqual([true, false])
    expect(found.map(nameCompared)).toEqual([
      'Arms, press: arms from the vertical',
      'Arms, from straight down, entry: arms from the vertical',
    ])
    expect(found[0] && sayResult(found[0].first)).toBe('30.0° clockwise\n28.0 to 32.0°')
    expect(found.map(sayCompared)).toEqual(['second 17.2 to 22.8° less', 'no difference that this film can show'])
  })

  it('have names of their own where arms were measured both ways in one phase', () => {
    const both = [arms('entry', 30), arms('entry', 5, 1, true)]
    expect(new Set(compareMeasures(both, both).map(nameCompared)).size).toBe(2)
  })

  it('are not compared of a distance whose side of the tip is not known, nor of what the coach chose', () => {
    const distance = (value: number, points: OnFrames['points']): InPhase => {
      const taken: OnFrames = { ...still, kind: 'distance', points, metres: 1 }
      return {
        taken,
        results: [result('distanceFromTip', value, 0.05), result('heightOverTip', 0.1, 0.05)],
        phase: null,
      }
    }
    const [sided, old] = [distance(-0.8, { board: { x: 1, y: 1 } }), distance(0.8, {})]
    expect(compareMeasures([old], [sided])).toEqual([])
    expect(compareMeasures([old], [old])).toEqual([])
    const [found, ...more] = compareMeasures([distance(0.8, { board: { x: 1, y: 1 } }), old], [sided])
    expect(more).toEqual([])
    expect(found && sayCompared(found)).toBe('second 1.46 to 1.74 m less')
    expect(found && sayResult(found.second)).toBe('0.80 m over the board\n−0.90 to −0.70 m')
  })

  it('of what has a side are compared by size, since cameras may look from either side', () => {
    const [same] = compareMeasures([arms(null, 30)], [arms(null, -30)])
    expect(same).toMatchObject({ opposite: true, difference: { told: false } })
    expect(same && sayCompared(same)).toBe('to different sides, as the two cameras see it')
    const [near] = compareMeasures([arms(null, 1)], [arms(null, -1)])
    expect(near && sayCompared(near)).toBe('no difference that this film can show')
    const [more] = compareMeasures([arms(null, -10)], [arms(null, -20)])
    expect(more && sayCompared(more)).toBe('second 7.2 to 12.8° more')
  })
})
