import { expect, it } from 'vitest'
import { curriculumOf } from '@/tests/support/small-coast'
import { careDays, careSince, sayCare } from './growth'

const today = 20_519

it('asks for care for ninety days after the latest note', () => {
  expect(careSince([], today)).toBeNull()
  expect(careSince([today - careDays], today)).toBeNull()
  expect(careSince([today - careDays + 1], today)).toBe(today - careDays + 1)
  expect(careSince([today - 80, today - 3, today - 200], today)).toBe(today - 3)
  expect(careSince([today + 1], today)).toBeNull()
})

it('says since when, and what to look at', () => {
  expect(sayCare(today - 4, { curriculum: curriculumOf(), today, diver: 'Mira' })).toBe(
    'Mira has grown quickly, as noted on 3 March. Technique may be off for a while: check lead-ups and distances before new dives.',
  )
})
