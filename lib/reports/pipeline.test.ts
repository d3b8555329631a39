import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { endOf } from '../../seed/builders/record'
import { historyOver } from '../../tests/support/histories'
import { coast, today } from '../../tests/support/small-coast'
import { standingRow } from '../assessment/readiness/standing-row'
import { datesOf } from '../assessment/readiness/target-standing'
import { listTargets } from '../assessment/readiness/targets'
import { levelRows, moveRows, type PipelineRow, placeDiver } from './pipeline'

const clubs = ['here', 'there']
const figure = (row: PipelineRow, name: string) => row.figures.find((one) => one.figure === name)?.divers ?? []

describe('the pipeline', () => {
  it('counts each diver once, by the level held and by what the board move says, whatever their histories', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(historyOver(coast, 12), fc.constantFrom(...clubs)), { maxLength: 6 }), (drawn) => {
        const divers = drawn.map(([record, club], index) =>
          placeDiver(coast, {
            id: `d${index}`,
            club,
            rows: listTargets(coast).map((target) => standingRow(datesOf(coast, record, endOf(today), 'UTC'), target)),
          }),
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
