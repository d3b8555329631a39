import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dayIn, parseDay } from './time'
import { clockTime, instantAt } from './wall-clock'

it('finds the instant that a zone shows as a day and a time', () => {
  expect(instantAt(parseDay('2026-01-15'), 14 * 60 + 5, 'Europe/Oslo')).toBe(Date.UTC(2026, 0, 15, 13, 5))
  expect(instantAt(parseDay('2026-07-15'), 14 * 60 + 5, 'Europe/Oslo')).toBe(Date.UTC(2026, 6, 15, 12, 5))
  expect(instantAt(parseDay('2026-07-15'), 0, 'Pacific/Chatham')).toBe(Date.UTC(2026, 6, 14, 11, 15))
})

it('shows again what it was asked for, but for the hour that a zone leaves out', () => {
  const zones = fc.constantFrom('UTC', 'Europe/Oslo', 'America/St_Johns', 'Pacific/Chatham', 'Asia/Kolkata')
  fc.assert(
    fc.property(
      fc.integer({ min: 18_000, max: 24_000 }),
      fc.integer({ min: 4 * 60, max: 1439 }),
      zones,
      (day, minutes, zone) => {
        const instant = instantAt(day, minutes, zone)
        expect(dayIn(instant, zone)).toBe(day)
        expect(clockTime(instant, zone)).toBe(
          `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`,
        )
      },
    ),
    { seed: 410_202 },
  )
})
