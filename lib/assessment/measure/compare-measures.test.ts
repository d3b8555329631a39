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
const arms = (phase: string | null, value: number, sd = 1, down = false): InPhase => {
  const taken: OnFrames = { kind: 'arms', frames: [], points: {}, upright: 'picture', down, metres: null, pixel: 2 }
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
    expect(found.map(nameCompared)[0]).toBe('Arms, press: arms from the vertical')
    expect(found[0] && sayResult(found[0].first)).toBe('30.0° clockwise\n28.0 to 32.0°')
    expect(found.map(sayCompared)).toEqual(['second 17.2 to 22.8° less', 'no difference that this film can show'])
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
