import { describe, expect, it } from 'vitest'
import { commonMarks, type FilmMark, markFor, pacesFor, timingFor } from './timing'

const marks = (times: Readonly<Record<string, number>>): FilmMark[] =>
  Object.entries(times).map(([key, time]) => ({ key, label: key, time }))
const first = marks({ entry: 2.1, flight: 1, 'come-out': 1.7, press: 0.3 })
const second = marks({ flight: 1.5, entry: 2.9, press: 0.6, hurdle: 0.1 })
const common = commonMarks(first, second)
const spans = { first: { start: 0.2, end: 2.6 }, second: { start: 0.5, end: null } }
const plain = { at: null, pace: 'clock', shift: 0 } as const

describe('two films by their marks', () => {
  it('have in common what is marked in both, in the order of the first', () => {
    expect(common.map(({ key }) => key)).toEqual(['press', 'flight', 'entry'])
    expect(pacesFor(common)).toEqual(['clock', 'flight', 'phases'])
    expect(pacesFor(common.slice(0, 2))).toEqual(['clock', 'phases'])
    expect(pacesFor([])).toEqual(['clock'])
  })

  it('come together at the mark that was asked for, else where the board is left, else at the first', () => {
    expect(markFor(common, { at: 'entry' })?.key).toBe('entry')
    expect(markFor(common, { at: 'hurdle' })?.key).toBe('flight')
    expect(markFor(common.slice(0, 1), { at: null })?.key).toBe('press')
    expect(markFor([], { at: null })).toBeNull()
  })

  it('run on one clock from there, in step through the flight, or through each phase', () => {
    const clock = timingFor(common, [], spans, { ...plain, at: 'press' }).map
    expect([0.3, 1].map(clock.toSecond).map((time) => time.toFixed(6))).toEqual(['0.600000', '1.300000'])
    const flight = timingFor(common, [], spans, { ...plain, pace: 'flight' }).map
    expect([0.3, 1, 2.1].map(flight.toSecond).map((time) => time.toFixed(6))).toEqual([
      '0.800000',
      '1.500000',
      '2.900000',
    ])
    const phases = timingFor(common, [], spans, { ...plain, pace: 'phases' }).map
    for (const mark of common) expect(phases.toSecond(mark.first)).toBeCloseTo(mark.second, 9)
  })

  it('come together at a frame that both measured, and are moved on by hand', () => {
    const measured = [{ key: 'arms', label: 'Arms', first: 0.8, second: 1 }]
    expect(timingFor(common, measured, spans, { ...plain, at: 'arms' }).map.toSecond(0.8)).toBe(1)
    expect(timingFor(common, [], spans, { ...plain, shift: 50 }).map.toSecond(1)).toBeCloseTo(1.55, 9)
  })

  it('begin together where nothing is common, and on one clock where a pace is impossible', () => {
    expect(timingFor([], [], spans, plain).map.toSecond(0.2)).toBe(0.5)
    expect(timingFor(common.slice(0, 1), [], spans, { ...plain, pace: 'flight' }).map.slopeAt(1)).toBe(1)
  })
})
