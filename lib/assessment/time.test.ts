import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dateOf, dayOf, formatDay, parseDay } from './time'

const day = fc.integer({ min: parseDay('1900-01-01'), max: parseDay('2199-12-31') })

it('keeps a day as its midnight in UTC, and reads the same day again', () => {
  expect(dateOf(parseDay('2026-03-07')).toISOString()).toBe('2026-03-07T00:00:00.000Z')
  fc.assert(
    fc.property(day, (one) => {
      expect(dayOf(dateOf(one))).toBe(one)
      expect(parseDay(formatDay(one))).toBe(one)
    }),
    { seed: 70_326 },
  )
})

it('reads the day of an instant within it, before 1970 too', () => {
  expect(dayOf(new Date('2026-03-07T23:59:59.999Z'))).toBe(parseDay('2026-03-07'))
  expect(dayOf(new Date('1969-12-31T12:00:00Z'))).toBe(parseDay('1969-12-31'))
})
