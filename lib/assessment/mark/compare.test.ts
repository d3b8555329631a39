import { describe, expect, it } from 'vitest'
import { tell } from '@/seed/clips/dive'
import { clips } from '@/seed/clips/dives'
import { inSeconds, sayDifference, sayMeasured } from '../measure/say-difference'
import { compareTimes, longestFrame, marksToUse, phaseAt } from './compare'
import { type Mark, type MarkKey, markKeysOf } from './mark'

const running = markKeysOf('running')
const mark = (key: MarkKey, atMs: number, changes: Partial<Mark> = {}): Mark => ({
  coach: 'ines',
  key,
  atMs,
  frameUs: 16_667,
  ...changes,
})

/** Marks as a coach sets them: the first frame at or after the true instants of a simulated dive. */
function marked(name: string): readonly Mark[] {
  const clip = clips.find((one) => one.name === name)
  if (!clip) throw new Error(`there is no clip ${name}`)
  const { takeOff, entry } = tell(clip.simulated)
  const { rate } = clip
  const at = (key: MarkKey, time: number) =>
    mark(key, Math.round((1000 * Math.ceil(time * rate)) / rate), { frameUs: Math.round(1_000_000 / rate) })
  return [at('press', takeOff - 0.7), at('flight', takeOff), at('entry', entry)]
}

describe('times of two films', () => {
  it.each([
    ['101b-sound', '101b-arms-short'],
    ['401b-sound', '401b-leaning'],
    ['201a-1m-sound', '201a-1m-short'],
    ['101b-sound', '101b-3m-sound'],
    ['101b-sound', '201a-arched'],
  ])('of %s and %s hold the true difference, told only where it is more than frames hide', (one, other) => {
    const [first, second] = [one, other].map((name) =>
      tell(clips.find((clip) => clip.name === name)?.simulated ?? never()),
    )
    const truth = (second?.truth.flightTime ?? 0) - (first?.truth.flightTime ?? 0)
    const found = compareTimes(marked(one), marked(other), running)
    expect(found.map(({ from, to }) => `${from} to ${to}`)).toEqual(['press to flight', 'flight to entry'])
    const air = found[1]?.time
    expect(air?.by.low).toBeLessThanOrEqual(truth)
    expect(air?.by.high).toBeGreaterThanOrEqual(truth)
    expect(air?.told).toBe(Math.abs(truth) > 2 / 60)
  })

  it('are each to the next mark that both have; all of the flight and the way up besides', () => {
    const first = [mark('flight', 1000), mark('highest point', 1400), mark('come-out', 1800), mark('entry', 2100)]
    const second = [...first.map((one) => ({ ...one, atMs: one.atMs + 500 })), mark('press', 900)]
    const found = compareTimes(first, second, running)
    expect(found.map(({ from, to, phase }) => [from, to, phase])).toEqual([
      ['flight', 'come-out', 'flight'],
      ['come-out', 'entry', 'come-out'],
      ['flight', 'entry', null],
      ['flight', 'highest point', null],
    ])
    for (const { time } of found) expect(time).toMatchObject({ told: false })
  })

  it('leave out marks against the order, and know less where frames are unknown', () => {
    const good = [mark('flight', 1000), mark('entry', 2200)]
    expect(compareTimes(good, [mark('flight', 1500), mark('entry', 1400)], running)).toEqual([])
    const vague = good.map((one) => ({ ...one, frameUs: null }))
    const [sharp, blurred] = [good, vague].map((second) => compareTimes(good, second, running)[0]?.time.second.sd ?? 0)
    expect((blurred ?? 0) / (sharp ?? 1)).toBeCloseTo(longestFrame / 0.016667, 3)
  })
})

describe('whose marks', () => {
  it('are those of whoever marked most, and of two alike the one who asks', () => {
    const by = (coach: string, ...keys: MarkKey[]) => keys.map((key) => mark(key, 1000, { coach }))
    const marks = [...by('ines', 'flight'), ...by('birk', 'flight', 'entry')]
    expect(marksToUse(marks, 'ines').map(({ coach }) => coach)).toEqual(['birk', 'birk'])
    expect(marksToUse([...marks, ...by('ines', 'entry')], 'ines')[0]?.coach).toBe('ines')
    expect(marksToUse([], 'ines')).toEqual([])
  })
})

describe('what is said', () => {
  it('is how much longer, or that the film cannot show it', () => {
    const [apart] = compareTimes(
      [mark('flight', 1000), mark('entry', 2200)],
      [mark('flight', 1000), mark('entry', 2350)],
      running,
    )
    const [alike] = compareTimes(
      [mark('flight', 1000), mark('entry', 2200)],
      [mark('flight', 1000), mark('entry', 2217)],
      running,
    )
    if (!apart || !alike) throw new Error('there is a time')
    expect(sayMeasured(apart.time.first, inSeconds)).toBe('1.200 ± 0.013 s')
    expect(sayDifference(apart.time, inSeconds)).toBe('0.150 ± 0.019 s longer')
    expect(sayDifference(alike.time, inSeconds)).toBe('no difference that this film can show')
    expect(sayMeasured({ value: 1, sd: 1, low: 0, high: 2.96 }, inSeconds)).toBe('1.000 s (0.000 to 2.960)')
  })
})

function never(): never {
  throw new Error('there is no such clip')
}

describe('the phase of a measure', () => {
  const ines = [mark('flight', 1017), mark('entry', 2100)]
  const birk = [mark('flight', 1033), mark('come-out', 1650), mark('entry', 2117)].map((one) => ({
    ...one,
    coach: 'birk',
  }))

  it('is what its coach saw there, though others see it begin a frame later', () => {
    expect(phaseAt([...birk, ...ines], { atMs: 2100, coach: 'ines' })).toBe('entry')
    expect(phaseAt([...birk, ...ines], { atMs: 2100, coach: 'birk' })).toBe('come-out')
  })

  it('is by the marks of others where its coach has none', () => {
    expect(phaseAt([...birk, ...ines], { atMs: 1700, coach: 'ines' })).toBe('come-out')
    expect(phaseAt(birk, { atMs: 2116, coach: 'ines' })).toBe('entry')
  })

  it('is none before the first mark, and where nobody marked', () => {
    expect(phaseAt(ines, { atMs: 900, coach: 'ines' })).toBeNull()
    expect(phaseAt([], { atMs: 900, coach: 'ines' })).toBeNull()
  })
})
