import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readDiverLines } from './new-divers'
import { formatDay, parseDay } from './time'

const today = parseDay('2026-03-07')
const problems = (text: string) => {
  const read = readDiverLines(text, today)
  return read.ok ? [] : read.problems
}

describe('pasted lines', () => {
  it('are read with commas, semicolons or tabs, with and without what may be missing', () => {
    const text = 'Ada, Reef, 2014-05-01, left, r\n\nBo;Sand\n  Cai \t van  Dune\t2013-12-31\r\n'
    expect(readDiverLines(text, today)).toEqual({
      ok: true,
      divers: [
        {
          givenName: 'Ada',
          familyName: 'Reef',
          born: parseDay('2014-05-01'),
          twistingSide: 'left',
          hurdleLeg: 'right',
        },
        { givenName: 'Bo', familyName: 'Sand', born: null, twistingSide: null, hurdleLeg: null },
        { givenName: 'Cai', familyName: 'van Dune', born: parseDay('2013-12-31'), twistingSide: null, hurdleLeg: null },
      ],
    })
  })

  it.each([
    ['Ada', /comma/],
    ['Ada, Reef, 1.5.2014', /Line 1: "1.5.2014" is not a date/],
    ['Ada, Reef, 2014-02-30', /is not a date that exists/],
    ['Ada, Reef, 2027-01-01', /future/],
    ['Ada, Reef, 1890-01-01', /too long ago/],
    ['Ada, Reef, 2014-05-01, up', /Line 1: "up" is no twisting side/],
    ['Ada, Reef, , , both', /no hurdle leg/],
    ['Ada, Reef, , , , x', /more than five parts/],
    [`${'A'.repeat(81)}, Reef`, /more than 80/],
    ['', /no diver in it/],
  ])('%j is refused with what to do', (text, message) => {
    expect(problems(text)).toEqual([{ line: 1, message: expect.stringMatching(message) }])
  })

  it('names every line that is wrong, by its number on the sheet, and the one that says the same twice', () => {
    expect(problems('Ada, Reef\n\nBo\nada, REEF\nCai, Dune, x').map(({ line }) => line)).toEqual([3, 4, 5])
  })

  it('give back what was written, whatever the names are', () => {
    const name = fc.stringMatching(/^[A-Za-zŁłÅåé' -]{1,20}$/).filter((text) => text.trim() !== '')
    const born = fc.integer({ min: today - 30_000, max: today })
    fc.assert(
      fc.property(name, name, born, (given, family, day) => {
        const read = readDiverLines(`${given}, ${family}, ${formatDay(day)}`, today)
        const tidy = (text: string) => text.trim().replace(/\s+/g, ' ')
        expect(read).toMatchObject({
          ok: true,
          divers: [{ givenName: tidy(given), familyName: tidy(family), born: day }],
        })
      }),
    )
  })
})
