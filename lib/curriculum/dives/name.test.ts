import { expect, it } from 'vitest'
import { spokenName, writeHalves } from './name'
import { parseDive } from './parse'

it.each([
  ['401B', 'Inward dive, pike'],
  ['102C', 'Forward somersault, tuck'],
  ['105C', 'Forward 2½ somersaults, tuck'],
  ['204A', 'Back 2 somersaults, straight'],
  ['1011C', 'Forward 5½ somersaults, tuck'],
  ['113B', 'Flying forward 1½ somersaults, pike'],
  ['212C', 'Flying back somersault, tuck'],
  ['5111A', 'Forward dive, ½ twist, straight'],
  ['5122D', 'Forward somersault, 1 twist, free'],
  ['5231D', 'Back 1½ somersaults, ½ twist, free'],
  ['5156B', 'Forward 2½ somersaults, 3 twists, pike'],
  ['600A', 'Armstand dive, straight'],
  ['611A', 'Armstand forward ½ somersault, straight'],
  ['612B', 'Armstand forward somersault, pike'],
  ['6243D', 'Armstand back 2 somersaults, 1½ twists, free'],
])('%s is "%s"', (number, name) => {
  const result = parseDive(number)
  expect(result.ok && spokenName(result.dive)).toBe(name)
})

it('writes halves', () => {
  expect([0, 1, 2, 3, 4, 9].map(writeHalves)).toEqual(['0', '½', '1', '1½', '2', '4½'])
})
