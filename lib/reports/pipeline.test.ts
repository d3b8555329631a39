import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { endOf } from '../../seed/builders/record'
import { historyOver } from '../../tests/support/histories'
import { coast, holding, today } from '../../tests/support/small-coast'
import { levelRows, moveRows, type PipelineRow, placeDiver } from './pipeline'
import { datesOf, standingOf } from './standing'

const clubs = ['here', 'there']
const figure = (row: PipelineRow, name: string) => row.figures.find((one) => one.figure === name)?.divers ?? []

describe('the pipeline', () => {
  it('counts each diver once, by the level held and by what the board move says, whatever their histories', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(historyOver(coast, 12), fc.constantFrom(...clubs)), { maxLength: 6 }), (drawn) => {
        const divers = drawn.map(([record, club], index) =>
          placeDiver(coast, { id: `d${index}`, club, record, date: endOf(today), zone: 'UTC' }),
        )
        const ids = divers.map(({ id }) => id).sort()
        expect(
          levelRows(coast, clubs, divers)
            .flatMap((row) => figure(row, 'divers'))
            .sort(),
        ).toEqual(ids)
        expect(
          moveRows(coast, clubs, divers)
            .flatMap((row) => row.figures.flatMap((one) => one.divers))
            .sort(),
        ).toEqual(ids)
        for (const row of levelRows(coast, clubs, divers)) {
          const here = new Set(figure(row, 'divers'))
          for (const { divers: counted } of row.figures) expect(counted.every((id) => here.has(id))).toBe(true)
        }
      }),
      { seed: 20260314, numRuns: 40 },
    )
  })
})

describe('how a diver stands', () => {
  const standing = (record: Parameters<typeof datesOf>[1], target: Parameters<typeof standingOf>[1]) =>
    standingOf(datesOf(coast, record, endOf(today), 'UTC'), target).standing

  it('is ready when all that is asked is met, near within three good attempts, on the way with a new skill to learn', () => {
    expect(standing(holding(['tread@poolside'], today), 'level:one')).toBe('ready')
    expect(standing(holding([], today), 'level:one')).toBe('on the way')
    const begun = holding(['tread@poolside'], today)
    expect(standing({ ...begun, signOffs: [] }, 'level:one')).toBe('near')
  })

  it('is held up when she trained for sixty days and nothing that binds got better', () => {
    const old = holding(['tread@poolside'], today - 70)
    const jumps = holding(['tread@poolside'], today - 5).attempts
    const record = { ...old, attempts: [...old.attempts, ...jumps] }
    expect(standing(record, 'level:three')).toBe('held up')
    expect(standing(old, 'level:three')).toBe('on the way')
  })

  it('is counted apart while she is stood down', () => {
    const record = holding(['tread@poolside'], today, {
      standDowns: [{ id: 's', closes: 'water', from: today, until: null, receivedAt: 0 }],
    })
    expect(standing(record, 'level:one')).toBe('stood down')
  })
})
