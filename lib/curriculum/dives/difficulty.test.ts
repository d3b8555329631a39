import { expect, it } from 'vitest'
import { difficultyTenths, formatTenths, validAt } from './difficulty'
import { parseDive } from './parse'

function diveOf(number: string) {
  const result = parseDive(number)
  if (!result.ok) throw new Error(result.error.message)
  return result.dive
}

it.each([
  ['626C', 'platform only', 'an armstand dive starts from a platform, not from a springboard'],
  ['107A', 'not possible', 'the difficulty tables have no forward 3½ somersaults straight'],
  ['405A', 'not possible', 'the difficulty tables have no inward 2½ somersaults straight'],
  ['217C', 'not possible', 'the difficulty tables have no flying back 3½ somersaults'],
  ['5191B', 'not possible', 'the difficulty tables have no forward 4½ somersaults with ½ twist'],
  ['5193C', 'not possible', 'the difficulty tables have no forward 4½ somersaults with 1½ twists'],
  ['1011C', 'beyond the tables', 'the difficulty tables end at 4½ somersaults and this dive has 5½'],
] as const)('%s cannot be done, and says why', (number, code, why) => {
  const error = { code, message: `${number} cannot be done at 3 m: ${why}`, text: number }
  expect(difficultyTenths(diveOf(number), 3)).toEqual({ ok: false, error })
  expect(validAt(diveOf(number), 3)).toEqual({ ok: false, error })
  expect(validAt(diveOf(number), 1)).toMatchObject({ error: { message: `${number} cannot be done at 1 m: ${why}` } })
})

it('answers in tenths', () => {
  expect(difficultyTenths(diveOf('103B'), 1)).toEqual({ ok: true, tenths: 17 })
  expect(difficultyTenths(diveOf('103B'), 3)).toEqual({ ok: true, tenths: 16 })
  expect(validAt(diveOf('103B'), 3)).toEqual({ ok: true })
})

it('writes tenths', () => {
  expect([14, 20, 9, 0].map(formatTenths)).toEqual(['1.4', '2.0', '0.9', '0.0'])
})
